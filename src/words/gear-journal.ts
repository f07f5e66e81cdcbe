// The gear journal on the plain terminal: what its files say about their own past, and why something that was
// measured was not kept.

import type { Finding } from '../journal/findings.ts';
import type { SaveProblem } from '../journal/night-journal.ts';
import { diskTrouble } from './disk.ts';
import { nightFindingWords } from './night-file.ts';

export const KEPT_IN_GEAR = 'Kept in the gear journal.';

export const notKept = (why: string): string => `What was measured was not kept: ${why}`;
export const OTHER_WRITES = 'another copy of the program is writing what it measured. Try again.';
export const NOT_CONFIRMED = 'the disk did not confirm it in time.';
const OTHER_FOLDER = 'choose another data folder with --data DIR';

/** Beside the sentence of what cannot be read. */
export const MAY_BE_MISSING =
	'Something that was measured may be missing: put that right, or measure again.';

/** What is to be said of one journal, a sentence each; `file`: its path, or its paths. */
export function gearFindingWords(file: string, findings: readonly Finding[]): readonly string[] {
	const unread = findings.filter(({ code }) => code === 'file-unreadable').map(nightFindingWords);
	const doubtful = findings.filter(({ code }) => code === 'file-doubtful').map(nightFindingWords);
	return [
		...unread.map((one) => `${one} ${MAY_BE_MISSING}`),
		// What cannot be read has no beginning either.
		...(unread.length > 0 ? [] : wrongInside(file, findings)),
		...doubtful,
	];
}

/** Of what is wrong with the bytes of a journal the gravest. */
function wrongInside(file: string, findings: readonly Finding[]): readonly string[] {
	if (findings.some(({ code }) => LOSSES.has(code))) {
		return [
			`${file} is damaged, and something that was measured may be missing: measure it again, or put a copy of the file in its place.`,
		];
	}
	const has = (code: Finding['code']): boolean => findings.some((one) => one.code === code);
	if (has('newer-format')) {
		return [
			`${file} was written by a newer version of the program: not all of it may be understood.`,
		];
	}
	const cutOff = findings.filter((one) => one.code === 'tail-cut-off');
	if (cutOff.length > 0) return cutOff.map(({ keptIn }) => cutOffWords(file, keptIn));
	return has('bytes-damaged')
		? [`${file} is damaged, but nothing that was measured is missing: keep a copy of it.`]
		: [];
}

const LOSSES: ReadonlySet<Finding['code']> = new Set([
	'header-missing',
	'records-missing',
	'record-quarantined',
	'two-writers',
	'foreign-records',
	'copy-gone',
]);

function cutOffWords(file: string, keptIn: string | null): string {
	const what = `${file} was cut off in the middle of a write, and something that was measured may be missing`;
	return keptIn === null
		? `${what}: measure it again.`
		: `${what}: measure it again, then remove ${keptIn}, which is what was cut off.`;
}

/** Why nothing can be added to a journal that is there, and what to do. */
export function gearClosedWords(file: string, findings: readonly Finding[]): string {
	const unread = findings.find(({ code }) => code === 'file-unreadable');
	if (unread) return `${nightFindingWords(unread)} Put that right, or move it away, and try again.`;
	return findings.some(({ code }) => code === 'newer-format')
		? `${file} was written by a newer version of the program: use that one.`
		: `${file} is damaged, and nothing can be added to it. Put a copy of it in its place, or move it away, and try again.`;
}

/** Why nothing is written into the folder of the gear, and what to do; `trouble`: `ELOOP` for a link. */
export function gearFolderWords({
	path,
	trouble,
}: {
	readonly path: string;
	readonly trouble: string;
}): string {
	return trouble === 'ELOOP'
		? `${path} is a link, and nothing is written through one. Put a folder in its place, or ${OTHER_FOLDER}.`
		: `${path} cannot be used: ${diskTrouble(trouble)}. Put a folder in its place, or ${OTHER_FOLDER}.`;
}

/** Why the disk did not take it, and what to do. */
export function gearProblemWords(problem: SaveProblem): string {
	if (problem.code === 'slow') return NOT_CONFIRMED;
	const where = problem.code === 'memory-only' ? ` in ${problem.folder}` : '';
	return `${diskTrouble(problem.trouble)}${where}. Put that right, or ${OTHER_FOLDER}.`;
}
