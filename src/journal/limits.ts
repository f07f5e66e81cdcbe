// How large the parts of a record may grow. Apart from writing and reading so that whoever makes
// entries can ask first, and whoever keeps them can make them fit at the last.

import type { AnyEntry } from './record.ts';

/** Longest text in an entry, in bytes of UTF-8. */
const textLimitBytes = 4096;

/** A state is kept whole after so many records, from which a night can be gone on with. */
export const checkpointEvery = 100;

/** Longest record, in bytes of its line, but for headers and checkpoints. */
const recordLimitBytes = 16_384;

/** The kind of entry that carries a whole show, as a header does: kept as it is, within a header's limit. */
const WHOLE_SHOW = 'show-read-again';

/** Longest line of a header or checkpoint, in bytes. */
export const longLimitBytes = 2_097_152;

export type EntryProblem = 'text-too-long' | 'number-not-finite' | 'record-too-long';

/**
 * What in these entries cannot be kept as it is: `text-too-long` for a text over 4 KB,
 * `number-not-finite` for one that JSON has no word for, `record-too-long` for more than 16 KB in all,
 * whole shows left aside.
 */
export function entryProblems(entries: readonly AnyEntry[]): EntryProblem[] {
	const problems: EntryProblem[] = [];
	const limited = entries.filter(({ k }) => k !== WHOLE_SHOW);
	fitValue(limited, problems);
	const bytes = Buffer.byteLength(JSON.stringify(limited));
	if (bytes > recordLimitBytes) problems.push('record-too-long');
	return problems;
}

/**
 * The entries as they can be kept: texts over 4 KB cut between characters and ended with `…`,
 * numbers that are not finite as null; a whole show stays as it is. The same array when nothing had to
 * change.
 */
export function fitEntries<E extends AnyEntry>(entries: readonly E[]): readonly E[] {
	const problems: EntryProblem[] = [];
	const fitted = entries.map((entry) =>
		entry.k === WHOLE_SHOW ? entry : (fitValue(entry, problems) as E),
	);
	return problems.length === 0 ? entries : fitted;
}

function fitValue(value: unknown, problems: EntryProblem[]): unknown {
	if (typeof value === 'string') return fitText(value, problems);
	if (typeof value === 'number') return fitNumber(value, problems);
	if (Array.isArray(value)) return value.map((item) => fitValue(item, problems));
	if (value === null || typeof value !== 'object') return value;
	return Object.fromEntries(
		Object.entries(value).map(([key, item]) => [key, fitValue(item, problems)]),
	);
}

function fitText(text: string, problems: EntryProblem[]): string {
	// No character of UTF-16 takes more than three bytes of UTF-8.
	if (text.length * 3 <= textLimitBytes) return text;
	const bytes = Buffer.byteLength(text);
	if (bytes <= textLimitBytes) return text;
	problems.push('text-too-long');
	const room = textLimitBytes - Buffer.byteLength('…');
	const { read } = new TextEncoder().encodeInto(text, new Uint8Array(room));
	return `${text.slice(0, read)}…`;
}

function fitNumber(value: number, problems: EntryProblem[]): number | null {
	if (Number.isFinite(value)) return value;
	problems.push('number-not-finite');
	return null;
}
