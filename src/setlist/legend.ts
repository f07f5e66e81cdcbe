// What a list itself says of the act's own words, in lines such as `OPG = open G`.

import { INSTRUMENT_KINDS } from '../tuning/kind.ts';
import { readTuning } from '../tuning/tuning.ts';
import type { ListRow } from './list-row.ts';

const LEGEND = /^(\S{1,12})\s*(?:=|:=|→)\s*(\S.*)$/u;

export function isLegend(text: string): boolean {
	return LEGEND.test(text);
}

/** Those of the rows that explain a tuning: word to tuning. */
export function legendOf(rows: readonly ListRow[]): Readonly<Record<string, string>> {
	const found = rows.flatMap((row) => {
		const [, word = '', means = ''] =
			(row.kind === 'aside' && row.why === 'no-song' && LEGEND.exec(row.text)) || [];
		const name = word === '' ? null : tuningName(means);
		return name === null ? [] : [[word, name] as const];
	});
	return Object.fromEntries(found);
}

/** The tuning's name, or its notes, as the first kind of instrument that has it reads it; null for none. */
export function tuningName(text: string): string | null {
	for (const kind of INSTRUMENT_KINDS) {
		const reading = readTuning(text, kind, {});
		if (reading.ok && kind !== 'other') return reading.tuning.name;
	}
	return null;
}
