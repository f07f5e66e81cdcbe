// Records of older formats made into those of today, one step a version. A journal is never changed
// in place: what is upgraded is written into a new file.

import type { AnyEntry, JournalRecord, LogicalTime, RecordId } from './record.ts';
import { idOf, recordVersion } from './record.ts';
import { identified } from './upgrade-identities.ts';

/** A record of any version, as far as all versions agree. */
export type RawRecord = {
	readonly v: number;
	readonly s: number;
	readonly w: string;
	readonly t: number;
	readonly m: number;
	readonly e: readonly AnyEntry[];
	readonly h?: LogicalTime;
	readonly p?: readonly RecordId[];
	/** Its identity where that is not writer and number: of what version 1 wrote, its number alone. */
	readonly i?: RecordId;
};

/** For each version before today's, what makes a record of it one of the version after. */
export type UpgradeSteps = { readonly [version: number]: (record: RawRecord) => RawRecord };

/** The steps from every released version. */
const releasedSteps: UpgradeSteps = {
	// One writer at a time then, whose numbers alone told records apart and in which order they stood.
	1: (record) => ({
		...record,
		v: 2,
		i: String(record.s),
		h: [0, record.s],
		e: record.e.map(identified),
	}),
};

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
	const { v: _, i, h, p, ...rest } = upgraded;
	return {
		...rest,
		v: recordVersion,
		h: h ?? [0, record.s],
		...(p === undefined ? {} : { p }),
		id: i ?? idOf(record.w, record.s),
	};
}
