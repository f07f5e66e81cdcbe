// What stands in a lane of the picture: stretches with what fits into them, moments with their words.

import { displayWidth, fitWidth } from '../base/display-width.ts';
import type { MarkWhat } from '../words/timeline.ts';
import { type Content, element, type Html } from './html-page.ts';
import type { Moment, Stretch } from './timeline.ts';
import { type Along, across } from './timeline-axis.ts';
import { classes, HEIGHTS, LANE_PX, SYMBOLS, TALL } from './timeline-key.ts';

/** Pixels of a lane on the narrowest sheet and on a phone, a little less than it has: what fits there fits. */
const SHEET_PX = 520;
const PHONE_PX = 300;
const LETTER_PX = 6.5;

/** A stretch as a box with its label. */
export function stretch(one: Stretch, kind: string, along: Along): Html {
	const { x, width, part } = across(one, along);
	const height = HEIGHTS[one.what] ?? TALL;
	const y = (LANE_PX - height) / 2;
	return mark(one.what, one.sentence, [
		element('rect', { x, width, y, height }),
		texts({ long: kind === 'songs' ? one.label : one.long, short: one.label }, x, part),
	]);
}

/** What fits into the part of a lane: the long words on a sheet, the short ones on a phone. */
export function texts(
	{ long, short }: { readonly long: string; readonly short: string },
	x: string,
	part: number,
): Content {
	const fits = (text: string, lanePx: number): boolean =>
		text !== '' && displayWidth(text) * LETTER_PX + 4 <= part * lanePx;
	const text = (words: string, kind: string): Html =>
		element('text', { x, dx: 3, y: 16, class: kind }, words);
	const wide = fits(long, SHEET_PX) ? long : fits(short, SHEET_PX) ? short : null;
	const narrow = fits(long, PHONE_PX) ? long : fits(short, PHONE_PX) ? short : null;
	if (wide !== null && wide === narrow) return text(wide, 'a');
	return [wide === null ? null : text(wide, 'w'), narrow === null ? null : text(narrow, 'n')];
}

/** Titles aslant below their songs, where they do not run into one another. */
export function titles(stretches: readonly Stretch[], along: Along): Content {
	let lastPx = Number.NEGATIVE_INFINITY;
	return stretches.map(({ fromMs, toMs, long }) => {
		const px = (along.at((fromMs + toMs) / 2) / 100) * SHEET_PX;
		if (px - lastPx < 14) return null;
		lastPx = px;
		return element(
			'svg',
			{ x: `${along.at((fromMs + toMs) / 2)}%`, class: 'w' },
			element(
				'text',
				{ transform: `translate(-4 ${LANE_PX + 8}) rotate(50)` },
				fitWidth(long, Math.min(17, displayWidth(long))),
			),
		);
	});
}

/** A moment as a symbol, with its words where there is room. */
export function moment(one: Moment, next: Moment | undefined, along: Along): Html {
	const at = along.at(one.atMs);
	const roomTo = next === undefined ? 100 : along.at(next.atMs);
	const hasRoom = ((roomTo - at) / 100) * SHEET_PX > displayWidth(one.words) * LETTER_PX + 24;
	const kind = one.what as keyof typeof SYMBOLS;
	return mark(one.what, one.sentence, [
		element('svg', { x: `${at}%` }, [
			element('path', { d: SYMBOLS[kind] ?? SYMBOLS.incident, transform: 'translate(0 12)' }),
			one.number === null
				? null
				: element('text', { y: 16, 'text-anchor': 'middle' }, String(one.number)),
			hasRoom ? element('text', { x: 12, y: 16, class: classes('w', 'said') }, one.words) : null,
		]),
	]);
}

/** Something that can be pointed at and reached by the keyboard, with its sentence. */
export function mark(what: MarkWhat | 'waiting', sentence: string, drawing: Content): Html {
	return element('g', { class: classes('m', what), tabindex: 0, role: 'img' }, [
		element('title', {}, sentence),
		drawing,
		element(
			'foreignObject',
			{ y: LANE_PX, width: '100%', height: 70 },
			element('p', { dir: 'auto' }, sentence),
		),
	]);
}
