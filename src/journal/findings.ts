// What a night's files say about their own past, as data. Apart from reading, so that the screen, the report
// and the list of nights say the same thing.

import type { NightRead, SeqRange } from './join-segments.ts';
import type { JournalRead } from './read-journal.ts';

/** One thing noticed about a night's files. Codes are stable names for tests and JSON. */
export type Finding = {
	/** False where nothing that was shown as saved can have been lost. */
	readonly isWarning: boolean;
} & (
	| { readonly code: 'night-missing'; readonly id: string }
	/** `trouble`: the system's own word for it, as `EIO`. */
	| { readonly code: 'file-unreadable'; readonly path: string; readonly trouble: string }
	/** Read, though others made it or may write into it; `trouble`: which of these. */
	| { readonly code: 'file-doubtful'; readonly path: string; readonly trouble: string }
	| { readonly code: 'header-missing'; readonly isEmpty: boolean }
	/** `isHealed`: how things stand now is known all the same. */
	| { readonly code: 'records-missing'; readonly count: number; readonly isHealed: boolean }
	| {
			readonly code:
				| 'steps-not-kept'
				| 'record-quarantined'
				| 'two-writers'
				| 'foreign-records'
				| 'bytes-damaged';
			readonly count: number;
	  }
	| { readonly code: 'newer-format' }
	/** What was kept in another folder while the night's own took nothing. */
	| { readonly code: 'copy-gone' }
	/** `bytes`: null where nobody can say how many; `keptIn`: the file that they were put into, null while they are where they were, or are zeros. */
	| {
			readonly code: 'tail-cut-off';
			readonly bytes: number | null;
			readonly isZero: boolean;
			readonly keptIn: string | null;
	  }
);

/**
 * What was noticed in reading a night, the gravest first: `header-missing`, `records-missing`,
 * `record-quarantined`, `two-writers`, `newer-format`, `foreign-records`, `bytes-damaged`,
 * `tail-cut-off`. Empty for a night in good order.
 */
export function nightFindings(night: NightRead): Finding[] {
	return [
		...headerFindings(night),
		...missingFindings(night),
		...quarantineFindings(night),
		...writerFindings(night),
		...formatFindings(night),
		...foreignFindings(night),
		...damageFindings(night),
		...tornFindings(night),
	];
}

function missingCount(missing: readonly SeqRange[]): number {
	return missing.reduce((sum, range) => sum + range.to - range.from + 1, 0);
}

function headerFindings(night: NightRead): Finding[] {
	if (night.header) return [];
	const isEmpty = night.reads.every((read) => read.bytes.length === 0);
	return [{ code: 'header-missing', isWarning: true, isEmpty }];
}

function missingFindings(night: NightRead): Finding[] {
	const count = missingCount(night.missing);
	if (count === 0) return [];
	const checkpointSeq = night.checkpoint?.line.seq ?? 0;
	const isHealed = night.missing.every((range) => range.to <= checkpointSeq);
	return [{ code: 'records-missing', isWarning: true, count, isHealed }];
}

function quarantineFindings(night: NightRead): Finding[] {
	// Only the file that the night went on in tells whether its last record is lost.
	const count = night.reads.at(-1)?.quarantined?.lost ?? 0;
	return count === 0 ? [] : [{ code: 'record-quarantined', isWarning: true, count }];
}

function writerFindings({ conflicts }: NightRead): Finding[] {
	const count = conflicts.length;
	return count === 0 ? [] : [{ code: 'two-writers', isWarning: true, count }];
}

function formatFindings(night: NightRead): Finding[] {
	return night.isNewer ? [{ code: 'newer-format', isWarning: true }] : [];
}

function foreignFindings(night: NightRead): Finding[] {
	const count = night.reads.reduce((sum, read) => sum + read.foreign.length, 0);
	return count === 0 ? [] : [{ code: 'foreign-records', isWarning: true, count }];
}

function damageFindings(night: NightRead): Finding[] {
	const last = night.reads.at(-1);
	const count = night.reads.reduce((sum, read) => sum + damagedPlaces(read, read === last), 0);
	if (count === 0 || night.missing.length > 0) return [];
	return [{ code: 'bytes-damaged', isWarning: false, count }];
}

function damagedPlaces({ damaged, quarantined }: JournalRead, isLast: boolean): number {
	// What was the end of an earlier file was written again in the next.
	const isDamage = quarantined !== null && (!isLast || quarantined.lost === 0);
	return damaged.length + (isDamage ? 1 : 0);
}

function tornFindings(night: NightRead): Finding[] {
	const { torn, bytes } = night.reads.at(-1) ?? {};
	return torn && bytes ? [tornFinding(bytes.subarray(torn.start, torn.end), null)] : [];
}

/** What is said of bytes that a stopped write left at the end of a night. */
export function tornFinding(
	bytes: Uint8Array,
	keptIn: string | null,
): Extract<Finding, { code: 'tail-cut-off' }> {
	const isZero = bytes.every((byte) => byte === 0);
	return { code: 'tail-cut-off', isWarning: false, bytes: bytes.length, isZero, keptIn };
}
