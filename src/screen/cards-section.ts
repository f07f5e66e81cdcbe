// The cards of the next moment of hand-overs, all in tall letters where they fit, and under them a line for everybody else.

import { type Card, handOverCards } from './cards.ts';
import { handOverLines, leastLines } from './hand-over-lines.ts';
import { LEAST_CARD_COLUMNS, narrowCard, narrowCardRows } from './narrow-card.ts';
import { type Area, beside, fillRows, type Row } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { wideCard, wideCardRows } from './wide-card.ts';

export type CardsArea = Area & {
	/** 2 draws tall letters six rows high. */
	readonly scale: 1 | 2;
	readonly isAscii: boolean;
	/** Rows that are left say more of who gets something later. */
	readonly hasDetails?: boolean;
};

/** Exactly `rows` rows; never a player left out while there is a row for lines. */
export function cardsSection(state: ScreenState, area: CardsArea): Row[] {
	const { now, rest } = handOverCards(state);
	const { columns, rows } = area;
	const grid = gridFor(now.length, rest.length, area);
	const shown = now.slice(0, grid.across * grid.down);
	const others = now.slice(shown.length);
	// Where rows are left, cards under one another stand apart.
	const isApart = rows >= grid.down * (grid.high + 1) + others.length + rest.length;
	const tall = Array.from({ length: grid.down }, (_, row) => [
		...shelf(state, shown.slice(row * grid.across, (row + 1) * grid.across), { ...area, ...grid }),
		...(isApart ? [[]] : []),
	]).flat();
	// Rows that cards beside one another do not need go to the lines: what somebody holds comes before a blank.
	const areBeside = grid.across > 1;
	const cards = areBeside ? tall.slice(0, lastFilled(tall) + 1) : tall;
	const left = rows - cards.length;
	const lines = handOverLines(
		state,
		{ now: others, rest },
		{
			columns,
			rows: left,
			hasDetails: area.hasDetails === true,
		},
	);
	const above = areBeside ? fillRows(cards, rows - lines.length) : cards;
	return fillRows([...above, ...lines], rows);
}

function lastFilled(rows: readonly Row[]): number {
	return rows.findLastIndex((row) => row.some(({ text }) => text.trim() !== ''));
}

type Grid = {
	/** Cards beside one another, rows of cards, the height of one; `down` is 0 where there is no room for tall letters. */
	readonly across: number;
	readonly down: number;
	readonly high: number;
};

/** As wide as it goes with all of them tall; where not all fit, as many as do. */
function gridFor(count: number, rest: number, area: CardsArea): Grid {
	for (let tall = count; tall > 0; tall -= 1) {
		const lines = leastLines(count - tall, area.columns) + leastLines(rest, area.columns);
		const grid = gridOf(tall, area.rows - lines, area);
		if (grid === null) continue;
		if (grid.across === 1) return grid;
		// What is left goes to what is to be checked.
		const spare = Math.floor((area.rows - lines) / grid.down);
		return { ...grid, high: Math.max(grid.high, Math.min(spare, grid.high + 2)) };
	}
	return { across: 1, down: 0, high: 0 };
}

function gridOf(count: number, rows: number, { columns, scale }: CardsArea): Grid | null {
	const gap = gapOf(columns);
	const most = Math.floor((columns + gap) / (LEAST_CARD_COLUMNS * scale + gap));
	for (let across = 1; across === 1 || across <= Math.min(most, count); across += 1) {
		const down = Math.ceil(count / across);
		const high = across === 1 ? wideCardRows(scale) : narrowCardRows(scale);
		if (down * high <= rows) return { across, down, high };
	}
	return null;
}

/** Between two cards. */
function gapOf(columns: number): number {
	return columns < 100 ? 1 : 3;
}

function shelf(state: ScreenState, cards: readonly Card[], area: CardsArea & Grid): Row[] {
	const { columns, across, high } = area;
	const [only] = cards;
	if (across === 1) return only ? wideCard(state, only, area) : [];
	const gap = gapOf(columns);
	const width = Math.floor((columns + gap) / across) - gap;
	return cards.reduce<Row[]>(
		(left, card, index) =>
			beside(
				left,
				narrowCard(state, card, { ...area, columns: width, rows: high }),
				index * (width + gap),
			),
		fillRows([], high),
	);
}
