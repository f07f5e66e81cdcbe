// How fast people answered the moments of drills, in one file of the data folder: by person, then by kind of
// moment. It stays on this laptop.

import { join } from 'node:path';
import type { DiskFault } from '../base/disk-fault.ts';
import type { Disk } from './disk.ts';
import { changeSmallFile, damaged, readSmallFile, type SmallFile } from './small-file.ts';

/** Seconds; `last` null where the last one was missed. */
export type Tally = {
	readonly best: number | null;
	readonly last: number | null;
	readonly answered: number;
	readonly missed: number;
};

/** What one person did, by kind of moment. */
export type PersonTallies = Readonly<Record<string, Tally>>;

export type DrillResults = {
	/** Who said last that the results are theirs; null before anybody did. */
	readonly who: string | null;
	readonly people: Readonly<Record<string, PersonTallies>>;
};

/** Where they are kept. */
export type DrillPlace = {
	readonly disk: Disk;
	/** The data folder. */
	readonly folder: string;
};

/** The file that they are in. */
export function drillResultsPath(folder: string): string {
	return join(folder, 'drills.json');
}

/** What was kept; none where there is nothing, or where it cannot be read, which `problem` says. */
export function readDrillResults(place: DrillPlace): {
	readonly results: DrillResults;
	readonly problem: DiskFault | null;
} {
	const { value: results, problem } = readSmallFile(fileOf(place));
	return { results, problem };
}

/** Changes what is kept, as it is now; says when that cannot be. */
export function changeDrillResults(
	place: DrillPlace,
	change: (before: DrillResults) => DrillResults,
): DiskFault | null {
	return changeSmallFile(fileOf(place), change);
}

/** With one more answer, or miss, of this person. */
export function withAnswer(
	{ who, people }: DrillResults,
	answer: { readonly person: string; readonly kind: string; readonly seconds: number | null },
): DrillResults {
	const { person, kind, seconds } = answer;
	const before = Object.hasOwn(people, person) ? people[person] : undefined;
	const { best = null, answered = 0, missed = 0 } = before?.[kind] ?? {};
	const tally: Tally =
		seconds === null
			? { best, last: null, answered, missed: missed + 1 }
			: { best: Math.min(best ?? seconds, seconds), last: seconds, answered: answered + 1, missed };
	return { who, people: { ...people, [person]: { ...before, [kind]: tally } } };
}

function fileOf({ disk, folder }: DrillPlace): SmallFile<DrillResults> {
	return {
		disk,
		path: drillResultsPath(folder),
		largestBytes: 1_000_000,
		none: { who: null, people: {} },
		valueOf: (stored) => {
			const { who, people } = recordOf(stored);
			return {
				who: typeof who === 'string' ? who : null,
				people: mapped(recordOf(people), (kinds) => mapped(recordOf(kinds), tallyOf)),
			};
		},
	};
}

function tallyOf(stored: unknown): Tally {
	const { best, last, answered, missed } = recordOf(stored);
	return {
		best: best === null ? null : numberOf(best),
		last: last === null ? null : numberOf(last),
		answered: numberOf(answered),
		missed: numberOf(missed),
	};
}

function mapped<Value>(
	record: Readonly<Record<string, unknown>>,
	to: (value: unknown) => Value,
): Readonly<Record<string, Value>> {
	return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, to(value)]));
}

function numberOf(value: unknown): number {
	if (typeof value === 'number' && value >= 0) return value;
	throw damaged();
}

function recordOf(value: unknown): Readonly<Record<string, unknown>> {
	if (typeof value !== 'object' || value === null || Array.isArray(value)) throw damaged();
	return value as Readonly<Record<string, unknown>>;
}
