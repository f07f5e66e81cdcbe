// Pieces of tall letters set in lines: which of their texts, how many to a line, at which scale. The view
// to be read from afar is made of these. Widths are in points of the face, of which a cell has `scale`.

import { graphemes } from '../base/display-width.ts';
import { TALL_GAP } from './card-words.ts';
import { type Row, rowWidth, type SpanStyle, span } from './row.ts';
import { hasTallLetter, tallRows, tallWidth } from './tall-glyphs.ts';

type Text = { readonly text: string; readonly width: number };

/** Words that stay together, in one of these ways: the usual one first, then ever shorter ones. */
export type TallPiece = { readonly texts: readonly Text[]; readonly style: SpanStyle };

/** A piece with the text that was chosen for it. */
export type SetPiece = Text & { readonly style: SpanStyle };

export type TallLine = readonly SetPiece[];

export type Look = { readonly scale: number; readonly isAscii: boolean };

/** A piece of those texts that the face has all letters for; null where there are none. */
export function tallPiece(texts: readonly string[], style: SpanStyle): TallPiece | null {
	const drawable = texts.filter((text) => text !== '' && graphemes(text).every(hasTallLetter));
	if (drawable.length === 0) return null;
	return { texts: drawable.map((text) => ({ text, width: tallWidth(text) })), style };
}

/** The first of a piece's texts that fits into so many cells; null where none does. */
export function firstFitting(
	{ texts, style }: TallPiece,
	columns: number,
	scale: number,
): SetPiece | null {
	const found = texts.find(({ width }) => width * scale <= columns);
	return found ? { ...found, style } : null;
}

/** The rows of so many lines, with a gap between two. */
export function linesRows(lines: number, scale: number): number {
	return lines === 0 ? 0 : lines * 3 * scale + (lines - 1) * gapRows(scale);
}

/** Blank rows beside letters of this scale. */
export function gapRows(scale: number): number {
	return Math.max(1, Math.floor(scale / 2));
}

/**
 * The pieces in as few lines as they can be, and then with as long texts as that allows; null where one does
 * not fit at all.
 */
export function setPieces(
	pieces: readonly TallPiece[],
	columns: number,
	scale: number,
): readonly TallLine[] | null {
	const room = Math.floor(columns / scale);
	const ways = pieces.reduce<readonly TallLine[]>(
		(before, { texts, style }) =>
			before.flatMap((set) => texts.map((text) => [...set, { ...text, style }])),
		[[]],
	);
	return ways.reduce<readonly TallLine[] | null>((best, way) => {
		const lines = broken(way, room);
		return lines !== null && (best === null || lines.length < best.length) ? lines : best;
	}, null);
}

/** Broken into lines, each as full as it gets; null where a piece is wider than a line. */
function broken(pieces: TallLine, room: number): readonly TallLine[] | null {
	const lines: SetPiece[][] = [];
	let used = 0;
	for (const piece of pieces) {
		if (piece.width > room) return null;
		const line = lines.at(-1);
		if (line !== undefined && used + TALL_GAP + piece.width <= room) {
			line.push(piece);
			used += TALL_GAP + piece.width;
		} else {
			lines.push([piece]);
			used = piece.width;
		}
	}
	return lines;
}

/** The rows of one line. */
export function drawnLine(line: TallLine, { scale, isAscii }: Look): Row[] {
	const drawn = line.map(({ text, width, style }) =>
		tallRows(text, { style, scale, isAscii }).map((row): Row => {
			const missing = width * scale - rowWidth(row);
			return missing > 0 ? [...row, span(' '.repeat(missing))] : row;
		}),
	);
	const gap = span(' '.repeat(TALL_GAP * scale));
	return Array.from({ length: 3 * scale }, (_, row) =>
		drawn.flatMap((piece, index) => [...(index === 0 ? [] : [gap]), ...(piece[row] ?? [])]),
	);
}

/** The rows of several lines. */
export function drawnLines(lines: readonly TallLine[], look: Look): Row[] {
	return lines.flatMap((line, index) => [
		...(index === 0 ? [] : blankRows(gapRows(look.scale))),
		...drawnLine(line, look),
	]);
}

export function blankRows(count: number): Row[] {
	return Array.from({ length: Math.max(0, count) }, (): Row => []);
}

// A countdown, which stands still while it counts.

/** A word and a time: `IN` and `2:33`. */
export type Count = { readonly word: string; readonly time: string; readonly style: SpanStyle };

/** Each digit has a cell of the widest one's width. */
const DIGIT_WIDTH = 5;
/** No time is wider. */
const WIDEST_TIME = '0 h 00';

/** What a countdown with one of these words takes at most. */
export function countWidth(words: readonly string[]): number {
	return Math.max(...words.map(tallWidth)) + TALL_GAP + timeWidth(WIDEST_TIME);
}

function timeWidth(time: string): number {
	return [...time].reduce((sum, letter) => sum + letterWidth(letter) + 1, -1);
}

function letterWidth(letter: string): number {
	return /\d/.test(letter) ? DIGIT_WIDTH : tallWidth(letter);
}

/** The rows of a countdown, so many points wide: the word at the left, the time's end at the right. */
export function drawnCount({ word, time, style }: Count, width: number, look: Look): Row[] {
	const { scale } = look;
	const gap = (points: number) => span(' '.repeat(Math.max(0, points) * scale));
	const letters = [...time].map((letter) => {
		const lead = letterWidth(letter) - tallWidth(letter);
		return tallRows(letter, { style, ...look }).map((row): Row => [gap(lead), ...row]);
	});
	const between = width - tallWidth(word) - (time === '' ? 0 : timeWidth(time));
	return tallRows(word, { style, ...look }).map((row, at) => [
		...row,
		gap(between),
		...letters.flatMap((letter, index) => [gap(index === 0 ? 0 : 1), ...(letter[at] ?? [])]),
	]);
}
