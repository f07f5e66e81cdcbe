// The picture of a night in characters, for a terminal of 80 columns: what fills most of a cell's time stands in it, and a
// mark over it.

import { cleanText } from '../base/clean-text.ts';
import { fitWidth } from '../base/display-width.ts';
import type { NightMs } from '../journal/entry.ts';
import { MARK_SHORT, type MarkWhat, TIMELINE } from '../words/timeline.ts';
import { PAPER_COLUMNS, wrapped } from './paper.ts';
import type { Span, Timeline, TimelineLane } from './timeline.ts';
import { wallClock } from './timeline.ts';

type Sign = { readonly unicode: string; readonly ascii: string };

const SIGNS: Readonly<Record<MarkWhat, Sign>> = {
	song: { unicode: '━', ascii: '=' },
	'cut-short': { unicode: '╍', ascii: '/' },
	hands: { unicode: '█', ascii: '#' },
	ready: { unicode: '─', ascii: '-' },
	recheck: { unicode: '┄', ascii: '~' },
	'not-ready': { unicode: '·', ascii: '.' },
	work: { unicode: '▒', ascii: '%' },
	out: { unicode: 'x', ascii: 'x' },
	many: { unicode: '▚', ascii: '&' },
	break: { unicode: '!', ascii: '!' },
	incident: { unicode: '?', ascii: '?' },
	cue: { unicode: '^', ascii: '^' },
};

const NAME_COLUMNS = 13;
const CELLS = PAPER_COLUMNS - NAME_COLUMNS - 1;
/** A time of day and room before the next one. */
const TICK_CELLS = 11;
const MOST_DIGIT = 9;

/** Lines of at most 80 cells, none of them ended. */
export function timelineText(timeline: Timeline, isAscii: boolean): readonly string[] {
	const { lanes, load } = timeline;
	const sign = (what: MarkWhat): string => SIGNS[what][isAscii ? 'ascii' : 'unicode'];
	const line = (name: string, cells: readonly string[]): string =>
		`${fitWidth(cleanText(name), NAME_COLUMNS, { align: 'right', ascii: isAscii })} ${cells.join('')}`.trimEnd();
	const used = new Set(
		lanes.flatMap(({ stretches, moments }) => [...stretches, ...moments].map(({ what }) => what)),
	);
	const key = (Object.keys(SIGNS) as MarkWhat[])
		.filter((what) => used.has(what))
		.map((what) => `${sign(what)} ${MARK_SHORT[what]}`);
	return [
		line('', axis(timeline)),
		...lanes.map((lane) => line(lane.name, laneCells(lane, timeline, sign))),
		...(load === null ? [] : [line(TIMELINE.load, loadCells(timeline))]),
		...wrapped(key.join(', '), PAPER_COLUMNS, ''),
	];
}

/** The cell in which a moment is. */
function cellAt({ fromMs, toMs }: Span, atMs: NightMs): number {
	const cell = Math.floor(((atMs - fromMs) / (toMs - fromMs)) * CELLS);
	return Math.min(CELLS - 1, Math.max(0, cell));
}

function axis(timeline: Timeline): readonly string[] {
	const cells = new Array<string>(CELLS).fill(' ');
	for (let cell = 0; cell + TICK_CELLS <= CELLS; cell += TICK_CELLS) {
		const atMs = timeline.fromMs + (cell / CELLS) * (timeline.toMs - timeline.fromMs);
		write(cells, cell, wallClock(atMs, timeline.dayOffsetMinutes));
	}
	return cells;
}

function laneCells(
	{ kind, stretches, moments }: TimelineLane,
	timeline: Timeline,
	sign: (what: MarkWhat) => string,
): readonly string[] {
	const cells = new Array<string>(CELLS).fill(' ');
	const filled = new Array<number>(CELLS).fill(0);
	const cellMs = (timeline.toMs - timeline.fromMs) / CELLS;
	for (const { fromMs, toMs, what } of stretches) {
		for (let cell = cellAt(timeline, fromMs); cell <= cellAt(timeline, toMs); cell += 1) {
			const begins = timeline.fromMs + cell * cellMs;
			const covered = Math.min(toMs, begins + cellMs) - Math.max(fromMs, begins);
			if (covered <= (filled[cell] ?? 0)) continue;
			filled[cell] = covered;
			cells[cell] = what === 'hands' && kind === 'player' ? sign('song') : sign(what);
		}
	}
	if (kind !== 'instrument') {
		for (const { fromMs, toMs, label } of stretches) {
			const from = cellAt(timeline, fromMs);
			const isAlone = stretches.filter((one) => cellAt(timeline, one.fromMs) === from).length === 1;
			const short = cleanText(label);
			if (isAlone && from + short.length <= cellAt(timeline, toMs) + 1) write(cells, from, short);
		}
	}
	for (const { atMs, what } of moments) cells[cellAt(timeline, atMs)] = sign(what);
	return cells;
}

/** How many wait, as a digit; more than nine is nine. */
function loadCells(timeline: Timeline): readonly string[] {
	const most = new Array<number>(CELLS).fill(0);
	for (const { fromMs, toMs, waiting } of timeline.load ?? []) {
		for (let cell = cellAt(timeline, fromMs); cell <= cellAt(timeline, toMs - 1); cell += 1) {
			most[cell] = Math.max(most[cell] ?? 0, waiting);
		}
	}
	return most.map((waiting) => (waiting === 0 ? ' ' : String(Math.min(MOST_DIGIT, waiting))));
}

function write(cells: string[], from: number, text: string): void {
	for (const [place, letter] of [...text].entries()) {
		if (from + place < cells.length) cells[from + place] = letter;
	}
}
