// The tables of drills: of all that is kept, and of the one just done.

import { cleanText } from '../../base/clean-text.ts';
import { textTable } from '../../base/text-table.ts';
import type { DrillResults, PersonTallies } from '../../disk/drill-results.ts';
import type { DrillResult } from '../../drill/drill.ts';
import { DRILL, DRILL_KINDS, type DrillKind } from '../../words/drill.ts';

const KINDS = Object.keys(DRILL_KINDS) as readonly DrillKind[];

const cell = (seconds: number | null, otherwise: string): string =>
	seconds === null ? otherwise : DRILL.secondsCell(seconds);

/** A table for each person, by name; a row for each kind of moment that they met. */
export function resultsTables({ people }: DrillResults): string {
	const tables = Object.entries(people)
		.toSorted(([one], [other]) => (one < other ? -1 : 1))
		.map(([name, tallies]) =>
			[cleanText(name), ...textTable(DRILL.headings, KINDS.flatMap(rowOf(tallies)))].join('\n'),
		);
	return tables.length === 0 ? `${DRILL.noResults}\n` : `${tables.join('\n\n')}\n`;
}

function rowOf(tallies: PersonTallies) {
	return (kind: DrillKind): readonly (readonly string[])[] => {
		const tally = Object.hasOwn(tallies, kind) ? tallies[kind] : undefined;
		if (tally === undefined) return [];
		const { best, last, answered, missed } = tally;
		return [
			[
				DRILL_KINDS[kind],
				cell(best, DRILL.none),
				cell(last, DRILL.missedCell),
				String(answered),
				String(missed),
			],
		];
	};
}

/** The drill just done, moment by moment, beside the best there was before it. */
export function drillTable(
	results: readonly DrillResult[],
	bestOf: (kind: DrillKind) => number | null,
): string {
	const rows = results.map(({ kind, seconds }) => [
		DRILL_KINDS[kind],
		cell(seconds, DRILL.missedCell),
		cell(bestOf(kind), DRILL.none),
	]);
	return textTable(DRILL.ofNow, rows).join('\n');
}
