// What a column is, told by what its cells look like.

import { isNobody, type Use } from './columns.ts';
import { kindIn } from './guess-kind.ts';
import { EVENING_SECONDS, goUpAsHours } from './hours-of-day.ts';
import { readCell } from './read-cell.ts';
import { readLength } from './read-length.ts';
import { rowWord } from './row-words.ts';

/** Whether the cells are hours of the day or sums of lengths; a heading that speaks of such has little to prove. */
export function areClockTimes(cells: readonly string[], use: Use): boolean {
	const times = cells.map((cell) => /^(\d{1,2})[:.h](\d\d)(?:[:.](\d\d))?$/.exec(cell.trim()));
	const read = times.flatMap((time) =>
		time ? [Number(time[1]) * 3600 + Number(time[2]) * 60 + Number(time[3] ?? 0)] : [],
	);
	if (read.length < cells.length * 0.7) return false;
	if (use === 'clock') return true;
	return read.length >= 4 && goUpAsHours(read) && Math.max(...read) >= EVENING_SECONDS;
}

/** Whether the cells are lengths of songs, whatever stands above them: nobody plays a time. A sum or a word may stand below them. */
export function areLengths(cells: readonly string[]): boolean {
	const said = cells.filter(
		(cell) => rowWord(cell)?.is !== 'total' && !/^(?:\?+|tb[ac]|[-–—]+)$/i.test(cell),
	);
	const times = said.filter((cell) =>
		/^~?\(?\d{1,2}[:'’′][0-5]\d(?::[0-5]\d|["”″])?\)?$/.test(cell),
	);
	return times.length >= 2 && times.length * 10 >= said.length * 7;
}

/** Whether the cells are frets and signs for none. */
export function areFrets(cells: readonly string[]): boolean {
	const isFret = (cell: string) => /^(?:\d|1[0-2])$/.test(cell);
	return cells.some(isFret) && cells.every((cell) => isFret(cell) || /^[-–—]+$/.test(cell));
}

/** Whether the cells count the rows, whatever stands above them. */
export function areCounted(cells: readonly string[]): boolean {
	const numbers = cells.flatMap((cell) =>
		/^\d{1,3}[.)]?$/.test(cell) ? [Number.parseInt(cell, 10)] : [],
	);
	const isMost = numbers.length >= 3 && numbers.length * 10 >= cells.length * 7;
	return isMost && numbers.every((one, i) => one === i + 1);
}

/** Whether all are like 3.45 and none has more than 59 behind the dot: tenths of minutes would. */
export function areDotted(cells: readonly string[]): boolean {
	const dotted = cells.filter((cell) => /^\d{1,2}[.,][0-5]\d$/.test(cell));
	return (
		dotted.length >= 4 && cells.every((cell) => dotted.includes(cell) || !/^\d+[.,]\d+$/.test(cell))
	);
}

const LEAST_SHARE = 0.5;
const KEY_CELL = /^[A-G][#b♯♭]?\s*(?:m|min|minor|maj|major|dur|moll)?$/i;

/** What a column without a heading is, by the half of its cells. */
export function unheadedUse(cells: readonly string[], hasTitle: boolean): Use {
	const share = (test: (cell: string) => boolean) => cells.filter(test).length / cells.length;
	if (cells.length === 0) return 'other';
	if (share((cell) => /^\W*\d{1,3}\W*$/.test(cell)) > LEAST_SHARE)
		return hasTitle ? 'notes' : 'number';
	if (
		share((cell) => /\d[:'′.]\d\d/.test(cell) && readLength(cell.replace('.', ':')) !== null) >
		LEAST_SHARE
	)
		return 'length';
	if (!hasTitle && share((cell) => /\p{L}{2}/u.test(cell)) > LEAST_SHARE) return 'title';
	// A minor key among them, since E and D may be tunings too.
	if (
		hasTitle &&
		share((cell) => KEY_CELL.test(cell)) === 1 &&
		cells.some((cell) => /m/.test(cell))
	)
		return 'key';
	return 'notes';
}

/** Whether a column's cells are instruments and tunings; `unclear` where they are names of anything. */
export function readsAsPlayer(
	heading: string,
	cells: readonly string[],
	abbreviations: Readonly<Record<string, string>>,
): 'player' | 'nobody' | 'unclear' {
	if (isNobody(heading)) return 'nobody';
	const reader = {
		kind: kindIn(heading) ?? ('electric-6' as const),
		abbreviations,
		isKnown: () => false,
	};
	const said = cells.map((cell) => readCell(cell, reader));
	const isShort = cells.every((cell) => cell.split(/\s+/).length <= 8 && cell.length <= 60);
	if (!isShort) return kindIn(heading) === null ? 'nobody' : 'player';
	if (kindIn(heading) !== null) return 'player';
	const isKeys =
		cells.every((cell) => KEY_CELL.test(cell)) &&
		said.some((one) => one.kind === 'has' && one.tuning === null);
	if (isKeys) return 'nobody';
	const tells = said.some(
		(one) =>
			one.kind === 'none' ||
			(one.kind === 'unclear' && (one.why === 'capo-range' || one.why === 'extra-words')) ||
			(one.kind === 'has' && (one.tuning !== null || one.capo !== null || one.slot !== null)),
	);
	if (tells) return 'player';
	const isNames = cells.every((cell, at) => isNameLike(cell) || said[at]?.kind !== 'has');
	return isNames ? 'unclear' : 'nobody';
}

function isNameLike(cell: string): boolean {
	return /^\p{L}[\p{L}\p{N} '*-]*$/u.test(cell) && cell.split(/\s+/).length <= 2;
}
