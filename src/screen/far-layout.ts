// Where the cards of one moment and the countdown to it stand in the view to be read from afar: the largest
// letters with which all of them fit. Their size depends on names and the terminal, never on the time.

import type { Card } from './cards.ts';
import { type FarCard, farCard } from './far-card.ts';
import {
	blankRows,
	type Count,
	countWidth,
	drawnCount,
	drawnLine,
	drawnLines,
	firstFitting,
	gapRows,
	type Look,
	linesRows,
	setPieces,
	type TallPiece,
} from './far-lines.ts';
import { type Area, beside, cutRow, fillRows, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';

export type FarLayout = {
	/** Of the letters for slots, tunings and capos. */
	readonly scale: number;
	readonly draw: (isAscii: boolean) => Row[];
};

/** Columns between cards side by side, for each step of the scale. */
const CARD_GAP = 4;
/**
 * On a 14-inch panel of no more rows than these, letters three rows high are read at two metres, and at four;
 * see tests/screen/far-view.test.ts.
 */
const ROWS_AT_TWO_METRES = 45;
const ROWS_AT_FOUR_METRES = 22;
/** Rows to spare between cards stand so many at a place. */
const MOST_SPARE_ROWS = 2;
/** No mark of ready or not is wider. */
const MARK_WIDTH = 6;

type Scales = {
	/** Of slot, tuning and capo. */
	readonly main: number;
	/** Of the player, ready or not, and the countdown. */
	readonly small: number;
};

/** The cards in the largest letters that the area has room for; null where it has none for tall ones. */
export function farLayout(
	state: ScreenState,
	cards: readonly Card[],
	area: Area,
): FarLayout | null {
	const [first] = cards;
	if (first === undefined) return null;
	const count = countOf(first);
	const leastSmall = Math.ceil(area.rows / ROWS_AT_TWO_METRES);
	// Names that everybody knows, as long as they are read further off than those of the stage view.
	for (const [isShort, least] of [
		[false, Math.ceil(area.rows / ROWS_AT_FOUR_METRES)],
		[true, 1],
	] as const) {
		const drawn = cards.map((card) => farCard(state, card, isShort));
		const whole = drawn.filter((card) => card !== null);
		if (whole.length < cards.length) return null;
		for (let main = Math.floor(area.rows / 3); main >= least; main -= 1) {
			const found = layoutAt(whole, { count, area, main, leastSmall: Math.min(main, leastSmall) });
			if (found) return { scale: main, draw: found };
		}
	}
	return null;
}

type Asked = {
	readonly count: Count;
	readonly area: Area;
	readonly main: number;
	readonly leastSmall: number;
};

type Draw = (isAscii: boolean) => Row[];

function layoutAt(
	cards: readonly FarCard[],
	{ count, area, main, leastSmall }: Asked,
): Draw | null {
	for (const across of cards.map((_, index) => index + 1)) {
		for (let small = main; small >= leastSmall; small -= 1) {
			const scales = { main, small };
			const found =
				cards.length === 1
					? alone(cards[0] as FarCard, { count, area, scales })
					: shared(cards, { count, area, scales, across });
			if (found) return found;
		}
	}
	return inline(cards, { count, area, scales: { main, small: leastSmall } });
}

type Place = { readonly count: Count; readonly area: Area; readonly scales: Scales };

/** One card fills the screen: who and when above, ready or not below. */
function alone({ player, main, status }: FarCard, { count, area, scales }: Place): Draw | null {
	const { columns, rows } = area;
	const { small } = scales;
	const width = countWidth(wordsLike(count));
	const name = firstFitting(player, columns - (width + CARD_GAP) * small, small);
	const lines = setPieces(main, columns, scales.main);
	const state = status && firstFitting(status, columns, small);
	if (name === null || lines === null || (status !== null && state === null)) return null;
	const gap = gapRows(scales.main);
	const below = state === null ? 0 : gap + linesRows(1, small);
	if (linesRows(1, small) + gap + linesRows(lines.length, scales.main) + below > rows) return null;
	return (isAscii) => {
		const look: Look = { scale: small, isAscii };
		const time = drawnCount(count, width, look);
		return [
			...beside(drawnLine([name], look), time, columns - width * small),
			...blankRows(gap),
			...drawnLines(lines, { scale: scales.main, isAscii }),
			...(state === null ? [] : [...blankRows(gap), ...drawnLine([state], look)]),
		];
	};
}

/** Several share it under the countdown: in each who, and ready or not beside the name. */
function shared(
	cards: readonly FarCard[],
	{ count, area, scales, across }: Place & { readonly across: number },
): Draw | null {
	const { small } = scales;
	const gap = gapRows(scales.main);
	const width = countWidth(wordsLike(count));
	const between = CARD_GAP * scales.main;
	const cell = Math.floor((area.columns - between * (across - 1)) / across);
	if (width * small > area.columns) return null;
	const set = cards.map(({ player, main, status }) => {
		const least = status === null ? 0 : MARK_WIDTH + CARD_GAP;
		const name = firstFitting(player, cell - least * small, small);
		const lines = setPieces(main, cell, scales.main);
		if (name === null || lines === null) return null;
		const room = cell - (name.width + CARD_GAP) * small;
		const state = status && firstFitting(status, room, small);
		return { head: state === null ? [name] : [name, state], lines };
	});
	const whole = set.filter((one) => one !== null);
	if (whole.length < cards.length) return null;
	const most = Math.max(...whole.map(({ lines }) => lines.length));
	const height = linesRows(1, small) + gapRows(small) + linesRows(most, scales.main);
	const down = Math.ceil(cards.length / across);
	const head = linesRows(1, small) + gap;
	const spare = area.rows - head - down * height - (down - 1) * gap;
	if (spare < 0) return null;
	const apart = gap + Math.min(MOST_SPARE_ROWS, Math.floor(spare / Math.max(1, down - 1)));
	return (isAscii) => {
		const look: Look = { scale: small, isAscii };
		const drawn = whole.map(({ head: line, lines }) =>
			fillRows(
				[
					...drawnLine(line, look),
					...blankRows(gapRows(small)),
					...drawnLines(lines, { scale: scales.main, isAscii }),
				],
				height,
			),
		);
		return [
			...drawnCount(count, width, look),
			...blankRows(gap),
			...inGrid(drawn, { across, step: cell + between, gap: apart }),
		];
	};
}

/** Where rows are few: a line of tall letters for each card, ready or not below it in small ones. */
function inline(cards: readonly FarCard[], { count, area, scales }: Place): Draw | null {
	const { columns, rows } = area;
	const { main, small } = scales;
	const width = countWidth(wordsLike(count));
	const label = Math.max(...cards.map(({ player }) => player.texts.at(-1)?.width ?? 0));
	const set = cards.map(({ player, main: pieces, status, words }) => {
		const name = player.texts.at(-1);
		if (name === undefined) return null;
		const named: TallPiece = { texts: [{ ...name, width: label }], style: player.style };
		const mark = status?.texts.at(-1);
		const marks =
			status && mark ? [{ texts: [{ ...mark, width: MARK_WIDTH }], style: status.style }] : [];
		const lines =
			setPieces([named, ...pieces, ...marks], columns, main) ??
			setPieces([named, ...pieces], columns, main);
		return lines?.length === 1 ? { lines, words } : null;
	});
	const whole = set.filter((one) => one !== null);
	if (whole.length < cards.length) return null;
	const height = linesRows(1, main) + 1;
	const needed = cards.length * height + (cards.length - 1);
	const head = linesRows(1, small) + 1;
	if (width * small > columns || head + needed > rows) return null;
	return (isAscii) => [
		...drawnCount(count, width, { scale: small, isAscii }),
		[],
		...whole.flatMap(({ lines, words }, index) => [
			...(index === 0 ? [] : blankRows(1)),
			...drawnLines(lines, { scale: main, isAscii }),
			cutRow([span(words)], columns),
		]),
	];
}

type Grid = { readonly across: number; readonly step: number; readonly gap: number };

/** Blocks of equal height in rows of so many, from left to right. */
function inGrid(blocks: readonly Row[][], { across, step, gap }: Grid): Row[] {
	const rows: Row[] = [];
	for (let from = 0; from < blocks.length; from += across) {
		const line = blocks
			.slice(from, from + across)
			.reduceRight<Row[]>(
				(right, block) => (right.length === 0 ? block : beside(block, right, step)),
				[],
			);
		rows.push(...(from === 0 ? [] : blankRows(gap)), ...line);
	}
	return rows;
}

/** How far the moment is, or how long the sound has been gone. */
function countOf({ when, isUrgent }: Card): Count {
	const [word = '', time = ''] = when.trim().split(/ (.*)/);
	return { word, time: time.trim(), style: isUrgent ? 'accent' : 'plain' };
}

/** The words that may come to stand before its time without a key. */
function wordsLike({ word }: Count): readonly string[] {
	return word === 'in' || word === 'now' ? ['in', 'now'] : [word];
}
