// What was answered to what a set list left open, and the list as it reads then.

import type { InstrumentKind } from '../tuning/kind.ts';
import type { Abbreviations } from '../tuning/tuning.ts';
import { draftFromList } from './draft-from-list.ts';
import { kindIn } from './guess-kind.ts';
import type { Asked, ListReading, Rack } from './list-reading.ts';
import {
	type Field,
	type ListPlayer,
	type ListRow,
	NOBODY_NAMED,
	type SetList,
	type SongRow,
} from './list-row.ts';
import { nameKey } from './name-key.ts';
import type { DraftInstrument } from './show-draft.ts';

/** What a row is that could be read in two ways. */
export type RowAnswer =
	/** As it was taken. */
	| { readonly is: 'as-taken' }
	/** The other way: the piece is a length, or the row an interval. */
	| { readonly is: 'otherwise' }
	/** The piece is what this player has. */
	| { readonly is: 'hands'; readonly player: ListPlayer }
	/** It is the song's speed. */
	| { readonly is: 'tempo' }
	| { readonly is: 'titled'; readonly title: string };

export type Answers = {
	/** What a cell says instead, by `answerKey`. */
	readonly cells: ReadonlyMap<string, string>;
	/** By `answerKey`. */
	readonly rows: ReadonlyMap<string, RowAnswer>;
	/** The act's own words for tunings. */
	readonly abbreviations: Abbreviations;
	/** Names that are instruments'. */
	readonly instruments: readonly string[];
	/** What a mark such as x means, wherever it is a whole cell: the cell that says so, by the mark in lower case. */
	readonly marks: ReadonlyMap<string, string>;
	/** What kinds they are, by `nameKey`. */
	readonly kinds: ReadonlyMap<string, InstrumentKind>;
};

export const NO_ANSWERS: Answers = {
	...{ cells: new Map(), rows: new Map(), abbreviations: {}, instruments: [] },
	...{ kinds: new Map(), marks: new Map() },
};

/** By what an answer finds its cell or, for what is asked of a whole row, its song. */
export function answerKey({
	row,
	column,
	text,
	why,
}: Pick<Asked, 'row' | 'column' | 'text' | 'why'>): string {
	const isOfRow = why === 'no-title' || isTwoWays({ why });
	return isOfRow ? rowKey(row, text) : `${row} ${column}`;
}

/** Whether a row can be read in two ways, so that one is chosen and no line is typed. */
export function isTwoWays({ why }: Pick<Asked, 'why'>): boolean {
	return TWO_WAYS.has(why);
}

const TWO_WAYS: ReadonlySet<Asked['why']> = new Set([
	...(['length-or-title', 'interval-or-song'] as const),
	...(['which-player', 'shorthand-in-title', 'heading-or-song', 'alone'] as const),
]);

const rowKey = (row: number, text: string): string => `${row} "${text}"`;

/** What nobody can answer by a line: it stands in the file to be put right there, or was asked before. */
export function canBeAnswered({ why }: Asked): boolean {
	return !NOT_BY_A_LINE.has(why);
}

const NOT_BY_A_LINE: ReadonlySet<Asked['why']> = new Set([
	...(['interval-place', 'empty-encore', 'title-too-long', 'column-unclear'] as const),
	...(['same-as-open'] as const),
]);

/** The show of these rows, what was answered read as the answer. */
export function readingOf(list: SetList, rack: Rack, answers: Answers): ListReading {
	const rows = list.rows.map((row) => answeredCells(answeredRow(row, answers), answers));
	const named = [...answers.rows.values()].flatMap((one) =>
		one.is === 'hands' ? [one.player] : [],
	);
	const players = [...list.players];
	for (const player of named) {
		if (!players.some(({ id }) => id === player.id)) players.push(player);
	}
	return draftFromList(
		{ ...list, rows, players },
		{
			...rack,
			abbreviations: {
				...rack.abbreviations,
				...list.abbreviations,
				...answers.abbreviations,
			},
			sureNames: answers.instruments,
			kinds: answers.kinds,
		},
	);
}

/** Whom a piece of a row can be given to. */
export function possiblePlayers(list: SetList, rack: Rack): readonly ListPlayer[] {
	const racked = rack.players
		.filter(({ id }) => !list.players.some((one) => one.id === id))
		.map(({ id, name }) => ({ id, name, column: name }));
	const all = [...list.players, ...racked];
	return all.length === 0 ? [NOBODY_NAMED] : all;
}

function answeredRow(row: ListRow, { rows }: Answers): ListRow {
	if (row.kind === 'aside') {
		const answer = rows.get(rowKey(row.row, row.text));
		if (answer?.is === 'as-taken') return { ...row, why: 'no-song' };
		return answer?.is === 'titled' && row.song ? { ...row.song, title: answer.title } : row;
	}
	const { doubt } = row.kind === 'song' ? row : { doubt: null };
	if (row.kind !== 'song' || doubt === null) return row;
	const answer = rows.get(rowKey(row.row, row.title));
	return answer === undefined ? row : withoutDoubt({ ...row, doubt: null }, doubt, answer);
}

function withoutDoubt(
	row: SongRow,
	{ why, piece, title }: NonNullable<SongRow['doubt']>,
	answer: RowAnswer,
): ListRow {
	if (answer.is === 'otherwise' && why === 'interval-or-song') {
		const said = piece === '' ? null : { text: piece, column: row.titleColumn };
		return { kind: 'interval', row: row.row, length: row.length ?? said };
	}
	if (answer.is === 'otherwise' && why === 'heading-or-song')
		return { kind: 'aside', row: row.row, text: row.title, why: 'no-song' };
	if (answer.is === 'tempo') return { ...row, title, tempo: { text: piece, column: 'tempo' } };
	if (answer.is === 'otherwise')
		return { ...row, title, length: { text: piece, column: 'length' } };
	if (answer.is !== 'hands') return row;
	const { id, column } = answer.player;
	const hands = { ...row.hands, [id]: { text: piece, column } };
	if (why !== 'which-player') return { ...row, title, hands };
	const at = row.notes.indexOf(piece);
	return { ...row, hands, notes: row.notes.filter((_, index) => index !== at) };
}

function answeredCells(row: ListRow, { cells, marks }: Answers): ListRow {
	if (cells.size + marks.size === 0 || (row.kind !== 'song' && row.kind !== 'interval')) return row;
	const read = (field: Field | null): Field | null => {
		const answer = field === null ? undefined : cells.get(`${row.row} ${field.column}`);
		return field === null || answer === undefined ? field : { text: answer, column: field.column };
	};
	if (row.kind === 'interval') return { ...row, length: read(row.length) };
	return {
		...row,
		length: read(row.length),
		tempo: read(row.tempo),
		gap: read(row.gap),
		starts: read(row.starts),
		ends: read(row.ends),
		sameAs: read(row.sameAs ?? null),
		hands: Object.fromEntries(
			Object.entries(row.hands).map(([player, field]) => {
				const said = read(field) ?? field;
				const mark = marks.get(said.text.toLowerCase());
				return [player, mark === undefined ? said : { ...said, text: mark }];
			}),
		),
	};
}

/** The instruments whose kind is a guess: nothing says it, or only a heading over several columns. */
export function guessedKinds({ said, instruments }: ListReading): readonly DraftInstrument[] {
	const guessed = said.flatMap((one) =>
		one.code === 'made' && !one.isForTuning && (one.by === 'nothing' || one.by === 'group')
			? [one.instrument]
			: [],
	);
	return instruments.filter(({ id }) => guessed.includes(id));
}

/** The kinds that a line gives to some of these, `Finch mandolin, Heron acoustic`; null where a piece of it is none. */
export function kindsIn(
	line: string,
	instruments: readonly DraftInstrument[],
): ReadonlyMap<string, InstrumentKind> | null {
	const kinds = new Map<string, InstrumentKind>();
	for (const piece of line.split(/[,;]/)) {
		if (piece.trim() === '') continue;
		const key = nameKey(piece);
		const names = instruments
			.map(({ name }) => nameKey(name))
			.filter((name) => key.startsWith(`${name} `));
		const name = names.toSorted((a, b) => b.length - a.length)[0];
		const kind = name === undefined ? null : kindIn(key.slice(name.length));
		if (name === undefined || kind === null) return null;
		kinds.set(name, kind);
	}
	return kinds;
}
