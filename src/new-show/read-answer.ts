// Times, lengths and cells as they are typed into a field.

import { readLength } from '../setlist/read-length.ts';
import type { InstrumentKind } from '../tuning/kind.ts';
import { readTuning } from '../tuning/tuning.ts';

const TITLE_WITH_LENGTH = /^(.*\S)\s+\(?(\d{1,2}[:'’′][0-5]\d)\)?$/u;

/** Seconds of a length as it stands in a list; null for what is none. */
export function secondsOf(text: string): number | null {
	return readLength(text)?.seconds ?? null;
}

/** A title with its length behind it, as it stands in many a list: `Lantern 3:30`. */
export function readTitle(text: string): {
	readonly title: string;
	readonly seconds: number | null;
} {
	const [, title, length] = TITLE_WITH_LENGTH.exec(text.trim()) ?? [];
	const seconds = length === undefined ? null : secondsOf(length);
	return title === undefined || seconds === null
		? { title: text.trim(), seconds: null }
		: { title, seconds };
}

const CAPO = /(?:^|\s)(?:capo|c)\s*(\d{1,2})$/i;
const MOST_FRETS = 12;

/** A tuning and a capo as the trade writes them, `drop D c2`; the tuning null where only the capo is said. */
export function readTuned(
	text: string,
	kind: InstrumentKind,
): { readonly tuning: string | null; readonly capo: number } | null {
	const fret = CAPO.exec(text.trim());
	const capo = fret === null ? 0 : Number(fret[1]);
	const named = (fret === null ? text : text.trim().slice(0, fret.index)).trim();
	if (capo > MOST_FRETS) return null;
	if (named === '') return { tuning: null, capo };
	const reading = readTuning(named, kind, {});
	return reading.ok ? { tuning: reading.tuning.name, capo } : null;
}
