// Records of older formats made into those of today, one step a version. A journal is never changed
// in place: what is upgraded is written into a new file.

import type { AnyEntry, JournalRecord } from './record.ts';
import { recordVersion } from './record.ts';

/** A record of any version, as far as all versions agree. */
export type RawRecord = {
	readonly v: number;
	readonly s: number;
	readonly w: string;
	readonly t: number;
	readonly m: number;
	readonly e: readonly AnyEntry[];
};

/** For each version before today's, what makes a record of it one of the version after. */
export type UpgradeSteps = { readonly [version: number]: (record: RawRecord) => RawRecord };

/** The steps from every released version. Version 1 is the first, so there are none yet. */
const releasedSteps: UpgradeSteps = {};

/**
 * The record as today's version has it. One of a newer version is given back as it is: entries of
 * kinds unknown here are for whoever reads them to pass over.
 */
export function upgradeRecord(
	record: RawRecord,
	steps: UpgradeSteps = releasedSteps,
	target: number = recordVersion,
): JournalRecord {
	let upgraded = record;
	for (let version = record.v; version < target; version += 1) {
		const step = steps[version];
		if (step) upgraded = step(upgraded);
	}
	return { ...upgraded, v: recordVersion };
}
