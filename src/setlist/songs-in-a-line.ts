// A list typed as running text: several songs in a line, with the same sign between them.

const SIGNS = [' / ', ' • ', ' · ', ' > ', ', ', '; '] as const;
/** In brackets a sign divides nothing. */
const outside = (sign: string) => new RegExp(`${sign.replace(/[|/]/g, '\\$&')}(?![^(]*\\))`, 'u');
/** A player's cell, a title in quotes. */
const IS_CELL = /[,;/|]\s*\S+:\s|^"/;
/** What may stand before the first of them. */
const LABEL = /^(?:set ?list|list|songs?|order|tonight)\s*:\s*(?=\S)/iu;
const LEAST_PIECES = 3;
const MOST_LINES = 6;

/** The sign, where all lines but one are of several songs; null for lines of a song each. */
export function signBetween(lines: readonly string[]): string | null {
	const said = lines.filter((line) => line.trim() !== '');
	if (said.length === 0 || said.length > MOST_LINES || said.some((line) => IS_CELL.test(line)))
		return null;
	return (
		SIGNS.find((sign) => {
			const counts = said.map((line) => line.split(outside(sign)).length);
			const long = counts.filter((count) => count >= LEAST_PIECES).length;
			const isList = counts.reduce((sum, count) => sum + count, 0) >= said.length + LEAST_PIECES;
			return long > 0 && counts.filter((count) => count === 1).length <= 1 && isList;
		}) ?? null
	);
}

/** The line's pieces. */
export function piecesOf(line: string, sign: string): readonly string[] {
	return line
		.replace(LABEL, '')
		.split(outside(sign))
		.map((piece) => piece.trim());
}
