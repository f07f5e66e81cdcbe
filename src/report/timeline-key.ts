// How each kind of mark looks, and what that means: its shape and pattern say the same as its colour.

import { symbol, symbolCircle, symbolDiamond2, symbolTriangle } from 'd3-shape';
import { MARK_WORDS, type MarkWhat, TIMELINE } from '../words/timeline.ts';
import { type Content, element, type Html } from './html-page.ts';
import type { Timeline } from './timeline.ts';

/** Height of a lane. */
export const LANE_PX = 24;

/** How high each kind of stretch is drawn, in the middle of its lane. */
export const HEIGHTS: Readonly<Partial<Record<MarkWhat, number>>> = {
	ready: 8,
	recheck: 12,
	'not-ready': 6,
	work: 16,
	many: 14,
};

/** Of what has no height of its own. */
export const TALL = 20;

/** Of a moment. */
export const SYMBOLS = {
	break: symbol(symbolDiamond2, 250)(),
	incident: symbol(symbolCircle, 220)(),
	cue: symbol(symbolTriangle, 150)(),
} as const;

/** What the marks that are drawn mean, each beside its sample. */
export function key({ lanes, load }: Timeline): Html {
	const drawn = new Set<string>(
		lanes.flatMap(({ stretches, moments }) => [...stretches, ...moments].map(({ what }) => what)),
	);
	const items = (Object.keys(MARK_WORDS) as MarkWhat[])
		.filter((what) => drawn.has(what))
		.map((what) => element('li', {}, [sample(what, null), ' ', MARK_WORDS[what]]));
	const work = load === null ? [] : [element('li', {}, [gapSample(), ' ', TIMELINE.gap])];
	return element('figcaption', {}, element('ul', { class: 'key' }, [...items, ...work]));
}

/** A mark as it is drawn, beside words. */
export function sample(what: MarkWhat, number: number | null): Html {
	const shape =
		what in SYMBOLS
			? element('path', {
					d: SYMBOLS[what as keyof typeof SYMBOLS],
					transform: 'translate(15 12)',
				})
			: element('rect', {
					...{ x: 1, width: 28, y: (LANE_PX - (HEIGHTS[what] ?? TALL)) / 2 },
					height: HEIGHTS[what] ?? TALL,
				});
	return element(
		'svg',
		{ class: 'sample', 'aria-hidden': number === null ? 'true' : null },
		element('g', { class: classes('m', what) }, [
			shape,
			number === null
				? null
				: element('text', { x: 15, y: 16, 'text-anchor': 'middle' }, String(number)),
		]),
	);
}

function gapSample(): Html {
	const rect = element('rect', { class: 'gap', x: 1, width: 28, y: 2, height: TALL });
	return element('svg', { class: 'sample', 'aria-hidden': 'true' }, rect);
}

/** Patterns that say the same as the colours. */
export function patterns(): Html {
	const pattern = (id: string, drawing: Content): Html =>
		element('pattern', { id, width: 6, height: 6, patternUnits: 'userSpaceOnUse' }, drawing);
	const path = (d: string): Html => element('path', { d, class: 'pattern' });
	return element('svg', { class: 'patterns', 'aria-hidden': 'true' }, [
		pattern('slant', path('M0 6L6 0M-1 1L1 -1M5 7L7 5')),
		pattern('cross', path('M0 0L6 6M0 6L6 0')),
		pattern('bars', path('M2 0V6M5 0V6')),
		pattern('dots', path('M0 3H3')),
	]);
}

/** Names of classes as one attribute. */
export const classes = (...names: readonly string[]): string => names.join(' ');
