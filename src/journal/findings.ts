// What a night's files say about their own past, in plain sentences. Apart from reading, so that the
// screen, the report and the list of nights say the same thing in the same words.

import type { NightRead, SeqRange } from './join-segments.ts';
import type { JournalRead } from './read-journal.ts';

/** One thing noticed about a night's files. */
export type Finding = {
	/** Stable name for tests and JSON, e.g. `records-missing`. */
	readonly code: string;
	/** False where nothing that was shown as saved can have been lost. */
	readonly isWarning: boolean;
	readonly text: string;
};

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
	const text = isEmpty
		? "The night's file is empty: there is nothing in it to take up."
		: 'The beginning of the night, with its copy of the show, cannot be read; the show file is used in its place.';
	return [{ code: 'header-missing', isWarning: true, text }];
}

function missingFindings(night: NightRead): Finding[] {
	const count = missingCount(night.missing);
	if (count === 0) return [];
	const checkpointSeq = night.checkpoint?.line.seq ?? 0;
	const isHealed = night.missing.every((range) => range.to <= checkpointSeq);
	const text = isHealed
		? `${records(count)} of this night cannot be read; how things stand now is not touched by it.`
		: `${records(count)} of this night cannot be read: check what is on the rack and in hands.`;
	return [{ code: 'records-missing', isWarning: true, text }];
}

function quarantineFindings(night: NightRead): Finding[] {
	// Only the file that the night went on in tells whether its last record is lost.
	const quarantined = night.reads.at(-1)?.quarantined;
	if (!quarantined || quarantined.lost === 0) return [];
	const text =
		quarantined.lost > 1
			? `The last ${quarantined.lost} records cannot be read, though they may have been shown as saved: check the last steps.`
			: 'The last record cannot be read, though it may have been shown as saved: check the last step.';
	return [{ code: 'record-quarantined', isWarning: true, text }];
}

function writerFindings(night: NightRead): Finding[] {
	if (night.conflicts.length === 0) return [];
	const text = `Two copies of the program wrote into this night at once; ${records(night.conflicts.length)} of one of them ${were(night.conflicts.length)} left aside.`;
	return [{ code: 'two-writers', isWarning: true, text }];
}

function formatFindings(night: NightRead): Finding[] {
	if (!night.isNewer) return [];
	const text =
		'This night was recorded by a newer version of the program; it can be looked at but not gone on with.';
	return [{ code: 'newer-format', isWarning: true, text }];
}

function foreignFindings(night: NightRead): Finding[] {
	const count = night.reads.reduce((sum, read) => sum + read.foreign.length, 0);
	if (count === 0) return [];
	const text = `${records(count)} in this night's file ${count === 1 ? 'belongs' : 'belong'} to another night and ${were(count)} left aside.`;
	return [{ code: 'foreign-records', isWarning: true, text }];
}

function damageFindings(night: NightRead): Finding[] {
	const last = night.reads.at(-1);
	const count = night.reads.reduce((sum, read) => sum + damagedPlaces(read, read === last), 0);
	if (count === 0 || night.missing.length > 0) return [];
	const text = `${count === 1 ? 'A place' : `${count} places`} in the night's file ${count === 1 ? 'is' : 'are'} damaged, but no record is missing.`;
	return [{ code: 'bytes-damaged', isWarning: false, text }];
}

function damagedPlaces({ damaged, quarantined }: JournalRead, isLast: boolean): number {
	// What was the end of an earlier file was written again in the next.
	const isDamage = quarantined !== null && (!isLast || quarantined.lost === 0);
	return damaged.length + (isDamage ? 1 : 0);
}

function tornFindings(night: NightRead): Finding[] {
	const torn = night.reads.at(-1)?.torn;
	if (!torn) return [];
	const text = `The program or the power stopped in the middle of a write; its last ${torn.end - torn.start} bytes are left out, nothing shown as saved is among them.`;
	return [{ code: 'tail-cut-off', isWarning: false, text }];
}

function records(count: number): string {
	return count === 1 ? '1 record' : `${count} records`;
}

function were(count: number): string {
	return count === 1 ? 'was' : 'were';
}
