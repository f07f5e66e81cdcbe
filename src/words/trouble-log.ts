// The program's own troubles, as the list of nights tells them: one sentence for each code.

import { capital } from './as-sentence.ts';
import { diskTrouble } from './disk.ts';

const WORDS: { readonly [code: string]: string } = {
	unsaved: 'a night could not be written',
	'memory-only': 'a night was in memory only',
	slow: 'the disk was slow to confirm a night',
	'kept-again': 'the night was written again',
	'kept-elsewhere': 'a night was kept in another folder',
	'moved-back': 'the night was whole in its own folder again',
	'file-left': "a night's file was left for a new one",
	'not-confirmed': 'the disk did not confirm what was written',
	'not-seen': "the folder of a night's file could not be looked into",
	'file-gone': "a night's file was moved or removed by somebody else",
	'file-cut-short': "a night's file was cut short by somebody else",
	'written-by-other': "something else wrote into a night's file",
	'night-unreadable': 'an unfinished night could not be read',
	'file-unreadable': 'a file of a night could not be read',
	'file-doubtful': 'a file of a night belonged to others, or could be written by them',
	'header-missing': 'the beginning of a night could not be read',
	'records-missing': 'records of a night could not be read',
	'record-quarantined': 'the last records of a night could not be read',
	'steps-not-kept': 'the last steps of a night were not kept',
	'two-writers': 'two copies of the program wrote into a night',
	'newer-format': 'a night was of a newer version',
	'foreign-records': "records of another night were in a night's file",
	'bytes-damaged': "a night's file was damaged, no record was missing",
	'tail-cut-off': 'a night was cut off in the middle of a write',
	'copy-gone': 'a part of a night that was kept in another folder was gone',
	fault: 'the program had a fault of its own',
};

/** What happened, with the system's word for it or how many of what it tells. */
export function troubleWords({
	code,
	detail,
}: {
	readonly code: string;
	readonly detail: string | null;
}): string {
	const words = capital(WORDS[code] ?? code);
	if (detail === null) return `${words}.`;
	const isCode = /^[A-Z][A-Z0-9_]+$/.test(detail);
	const unit = code === 'tail-cut-off' ? ' bytes' : '';
	return `${words}: ${isCode ? diskTrouble(detail) : `${detail}${unit}`}.`;
}

export const NO_TROUBLES = 'No trouble with the disk was noted.';
export const TROUBLES_TITLE = 'Troubles noted, oldest first:';
