// The picture of a night as inline SVG, a drawing for each lane so that none is cut at the end of a page. Places along the
// clock are in percent, so that letters keep their size from a phone to a sheet. No script: a mark that is pointed at
// has its title, one that has the focus shows its sentence below it.

import { scaleLinear, scaleUtc } from 'd3-scale';
import {
	area,
	curveStepAfter,
	symbol,
	symbolCircle,
	symbolDiamond2,
	symbolTriangle,
} from 'd3-shape';
import { displayWidth, fitWidth } from '../base/display-width.ts';
import type { NightMs } from '../journal/entry.ts';
import { curfewSentence, MARK_WORDS, type MarkWhat, TIMELINE } from '../words/timeline.ts';
import { type Content, element, type Html, named } from './html-page.ts';
import { type Moment, type Span, type Stretch, type Timeline, wallClock } from './timeline.ts';

/** Pixels of a lane on the narrowest sheet and on a phone, a little less than it has: what fits there fits. */
const SHEET_PX = 520;
const PHONE_PX = 300;
const LETTER_PX = 6.5;

const LANE_PX = 24;
const LOAD_PX = 44;
const TICKS = 7;

/** How high each kind of stretch is drawn, in the middle of its lane. */
const HEIGHTS: Readonly<Partial<Record<MarkWhat, number>>> = {
	ready: 8,
	recheck: 12,
	'not-ready': 6,
	work: 16,
	many: 14,
};
const TALL = 20;

const SYMBOLS = {
	break: symbol(symbolDiamond2, 250)(),
	incident: symbol(symbolCircle, 220)(),
	cue: symbol(symbolTriangle, 150)(),
} as const;

type Along = {
	readonly timeline: Timeline;
	/** Percent of the lane at a moment, to 0.01. */
	readonly at: (atMs: NightMs) => number;
};

/** The figure with its key, and all it says once more as a table, which `id` names. */
export function timelineFigure(timeline: Timeline, id: string): Content {
	const { fromMs, toMs, lanes, load } = timeline;
	const scale = scaleLinear([fromMs, toMs], [0, 100]).clamp(true);
	const along: Along = { timeline, at: (atMs) => Math.round(scale(atMs) * 100) / 100 };
	const marks = lanes
		.flatMap(({ moments }) => moments)
		.sort((one, other) => one.atMs - other.atMs || (one.number ?? 0) - (other.number ?? 0));
	return [
		element('p', { class: 'skip' }, [
			TIMELINE.tabHint,
			' ',
			element('a', { href: `#${id}` }, TIMELINE.skip),
		]),
		patterns(),
		element('figure', { class: 'tl' }, [
			axis(along),
			...lanes.map((lane) =>
				row(lane.name, lane.kind, [
					grid(along),
					lane.stretches.map((one) => stretch(one, lane.kind, along)),
					lane.kind === 'songs' ? titles(lane.stretches, along) : null,
					lane.moments.map((one, place) =>
						moment(
							// In the lane of the songs the words would cover the numbers.
							lane.kind === 'songs' ? { ...one, words: '' } : one,
							lane.moments[place + 1],
							along,
						),
					),
				]),
			),
			load === null ? null : row(TIMELINE.load, 'load', loadLane(along)),
			key(timeline),
		]),
		marks.length === 0
			? null
			: element(
					'ul',
					{ class: 'marks' },
					marks.map((one) =>
						element('li', {}, [sample(one.what, one.number), ' ', named(one.sentence)]),
					),
				),
		element('details', { id }, [
			element('summary', {}, TIMELINE.asTable),
			element('table', {}, [
				element(
					'thead',
					{},
					element(
						'tr',
						{},
						TIMELINE.columns.map((name) => element('th', { scope: 'col' }, name)),
					),
				),
				element('tbody', {}, tableRows(timeline)),
			]),
		]),
	];
}

function tableRows({ lanes, load }: Timeline): Content {
	const rows = [
		...lanes.flatMap(({ name, stretches, moments }) =>
			[
				...stretches.map(({ fromMs, sentence }) => ({ atMs: fromMs, sentence })),
				...moments.map(({ atMs, sentence }) => ({ atMs, sentence })),
			]
				.sort((one, other) => one.atMs - other.atMs)
				.map(({ sentence }) => ({ name, sentence })),
		),
		...(load ?? []).map(({ sentence }) => ({ name: TIMELINE.load as string, sentence })),
	];
	return rows.map(({ name, sentence }) =>
		element('tr', {}, [
			element('th', { scope: 'row' }, named(name)),
			element('td', {}, named(sentence)),
		]),
	);
}

const classes = (...names: readonly string[]): string => names.join(' ');

function row(name: string, kind: string, drawing: Content): Html {
	return element('div', { class: 'row' }, [
		element('div', { class: 'name' }, named(name)),
		element('svg', { class: classes('lane', kind), role: 'group', 'aria-label': name }, drawing),
	]);
}

/** Full and half hours and less, as fit; every other one on a phone. */
function ticks({ timeline }: Along): readonly NightMs[] {
	const { fromMs, toMs, dayOffsetMinutes } = timeline;
	const offsetMs = dayOffsetMinutes * 60_000;
	return scaleUtc([fromMs + offsetMs, toMs + offsetMs], [0, 1])
		.ticks(TICKS)
		.map((tick) => tick.getTime() - offsetMs);
}

function axis(along: Along): Html {
	const { timeline, at } = along;
	const { curfewMs, dayOffsetMinutes } = timeline;
	return element('div', { class: 'row', 'aria-hidden': 'true' }, [
		element('div', { class: 'name' }),
		element('svg', { class: 'axis' }, [
			ticks(along).map((tick, place) =>
				element(
					'text',
					{
						...{ x: `${at(tick)}%`, y: 14, class: place % 2 === 0 ? 'a' : 'w' },
						'text-anchor': anchorAt(at(tick)),
					},
					wallClock(tick, dayOffsetMinutes),
				),
			),
			curfewMs === null
				? null
				: element(
						'text',
						{ x: `${at(curfewMs)}%`, y: 28, class: 'curfew', 'text-anchor': 'end' },
						curfewSentence(wallClock(curfewMs, dayOffsetMinutes)),
					),
		]),
	]);
}

function anchorAt(percent: number): 'start' | 'middle' | 'end' {
	if (percent < 4) return 'start';
	return percent > 96 ? 'end' : 'middle';
}

function grid(along: Along): Content {
	const { at } = along;
	const { curfewMs } = along.timeline;
	const line = (atMs: NightMs, kind: string): Html => {
		const x = `${at(atMs)}%`;
		return element('line', { class: kind, x1: x, x2: x, y1: 0, y2: '100%' });
	};
	return [
		ticks(along).map((tick) => line(tick, 'grid')),
		curfewMs === null ? null : line(curfewMs, 'curfew'),
	];
}

function stretch(one: Stretch, kind: string, along: Along): Html {
	const { x, width, part } = across(one, along);
	const height = HEIGHTS[one.what] ?? TALL;
	const y = (LANE_PX - height) / 2;
	return mark(one.what, one.sentence, [
		element('rect', { x, width, y, height }),
		texts({ long: kind === 'songs' ? one.label : one.long, short: one.label }, x, part),
	]);
}

function across({ fromMs, toMs }: Span, { at }: Along) {
	const from = at(fromMs);
	const part = Math.max(0, Math.round((at(toMs) - from) * 100) / 100);
	return { x: `${from}%`, width: `${part}%`, part: part / 100 };
}

/** What fits into the part of a lane: the long words on a sheet, the short ones on a phone. */
function texts(
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
function titles(stretches: readonly Stretch[], along: Along): Content {
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

function moment(one: Moment, next: Moment | undefined, along: Along): Html {
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
function mark(what: MarkWhat | 'waiting', sentence: string, drawing: Content): Html {
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

/** How many instruments wait, as steps; where a gap was is shaded: there work is done in a hurry. */
function loadLane(along: Along): Content {
	const { timeline, at } = along;
	const load = timeline.load ?? [];
	const most = Math.max(1, ...load.map(({ waiting }) => waiting));
	const height = scaleLinear([0, most], [LOAD_PX, 6]);
	const last = load.at(-1);
	const steps = [
		...load.map(({ fromMs, waiting }) => ({ atMs: fromMs, waiting })),
		...(last === undefined ? [] : [{ atMs: last.toMs, waiting: last.waiting }]),
	];
	const path = area<(typeof steps)[number]>()
		.x(({ atMs }) => at(atMs) * 10)
		.y0(LOAD_PX)
		.y1(({ waiting }) => height(waiting))
		.curve(curveStepAfter)
		.digits(1);
	return [
		grid(along),
		timeline.gaps.map((gap) => {
			const { x, width } = across(gap, along);
			return element('rect', { class: 'gap', x, width, y: 0, height: LOAD_PX });
		}),
		element(
			'svg',
			{ viewBox: `0 0 1000 ${LOAD_PX}`, preserveAspectRatio: 'none', class: 'steps' },
			element('path', { d: path(steps) }),
		),
		load.map((one) => {
			const { x, width, part } = across(one, along);
			return mark('waiting', one.sentence, [
				element('rect', { x, width, y: 0, height: LOAD_PX }),
				one.waiting === 0
					? null
					: texts({ long: String(one.waiting), short: String(one.waiting) }, x, part),
			]);
		}),
	];
}

/** What the marks that are drawn mean, each beside its sample. */
function key({ lanes, load }: Timeline): Html {
	const drawn = new Set<string>(
		lanes.flatMap(({ stretches, moments }) => [...stretches, ...moments].map(({ what }) => what)),
	);
	const items = (Object.keys(MARK_WORDS) as MarkWhat[])
		.filter((what) => drawn.has(what))
		.map((what) => element('li', {}, [sample(what, null), ' ', MARK_WORDS[what]]));
	const work = load === null ? [] : [element('li', {}, [gapSample(), ' ', TIMELINE.gap])];
	return element('figcaption', {}, element('ul', { class: 'key' }, [...items, ...work]));
}

function sample(what: MarkWhat, number: number | null): Html {
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
function patterns(): Html {
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
