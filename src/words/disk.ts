// What went wrong with a disk, said so that somebody with a guitar in the other hand understands it.

import type { DiskFault } from '../base/disk-fault.ts';
import { displayWidth } from '../base/display-width.ts';
import type { Problem } from '../base/problem.ts';
import type { SavePlace, SaveProblem, SaveWarning } from '../journal/night-journal.ts';
import { capital } from './as-sentence.ts';

const TROUBLES: { readonly [code: string]: string } = {
	ENOSPC: 'the disk is full: make room on it',
	EDQUOT: 'your share of the disk is full: make room on it',
	EFBIG: 'the file may not grow further',
	EROFS: 'the disk can only be read',
	EACCES: 'no permission',
	EPERM: 'no permission',
	EISDIR: 'it is a folder',
	EIO: 'the disk reports a fault',
	ENODEV: 'the disk is gone',
	ENXIO: 'the disk is gone',
	ESTALE: 'the disk is gone',
	ENOENT: 'the file or its folder is not there',
	ENOTDIR: 'part of the path is a file, not a folder',
	EMFILE: 'too many files are open',
	ENFILE: 'too many files are open on this machine',
	ELOOP: 'a link stands where the file should be',
	NOT_OURS: 'it belongs to another user',
	OPEN_TO_OTHERS: 'other users may write into it',
	PIPE: 'it is a pipe, not a file',
	SOCKET: 'it is a socket, not a file',
	DEVICE: 'it is a device, not a file',
	EEXIST: 'a file of that name is there already',
	ENAMETOOLONG: 'the name is too long for this disk',
	EBUSY: 'something else is writing there',
	ETIMEDOUT: 'the disk does not answer',
	DAMAGED: 'what is in it makes no sense; move it away',
};

/** Codes of the system; the others are ours. */
const SYSTEMS_OWN = /^E[A-Z0-9]+$/;

/** The cause of a disk's error as part of a sentence, the system's own word for it in brackets. */
export function diskTrouble(code: string): string {
	const words = TROUBLES[code] ?? 'the system refused it';
	return SYSTEMS_OWN.test(code) ? `${words} (${code})` : words;
}

/** What a disk would not do, as a whole sentence. */
export function diskFaultWords(fault: DiskFault): string {
	switch (fault.code) {
		case 'file-exists':
			return `${capital(thing(fault.kind))} named ${fault.path} is there already.`;
		case 'export-failed':
			return `${fault.path} could not be written: ${diskTrouble(fault.trouble)}.`;
		case 'folder-unusable':
			return `${fault.path} cannot be used: ${diskTrouble(fault.trouble)}.`;
		case 'folder-doubtful':
			return `${doubtWords(fault)}.`;
		case 'place-taken':
			return `${fault.path} is not used: ${diskTrouble(fault.trouble)}. ${NOT_KEPT[fault.holds]}`;
		case 'file-unreadable':
			return `${fault.path} cannot be read: ${diskTrouble(fault.trouble)}.`;
		case 'copy-gone':
			return `The night of ${fault.path} was kept in another folder, since its own took nothing, and is gone from there.`;
		case 'night-gone':
			return `${fault.path} is not there any more: it was moved or removed, and only ${fault.left} is left of that night (remove this too if nobody misses it).`;
		case 'night-empty':
			return fault.bytes === 0
				? `${fault.path} cannot be read: it is empty.`
				: `${fault.path} cannot be read: nothing of a night is left in its ${fault.bytes} bytes.`;
		case 'beginning-unreadable':
			return `The beginning of ${fault.path} cannot be read.`;
		case 'settings-unreadable':
			return `The preferences cannot be read, ${causeWords(fault)}; the defaults are used.`;
		case 'settings-late':
			return 'The preferences hold for now, and are written as soon as the disk answers.';
		case 'settings-not-kept':
			return `The preferences hold for now but could not be written: ${causeWords(fault)}.`;
		case 'locked': {
			const who = fault.pid === null ? '' : ` (process ${fault.pid})`;
			return `This show is already open in another copy of the program${who}: end that one, or go on there.`;
		}
	}
}

/** Of preferences that were changed and are lost with the program. */
export function settingsLostWords(fault: DiskFault): string {
	const trouble = 'trouble' in fault ? fault.trouble : 'ETIMEDOUT';
	return `The preferences that were changed could not be written: ${causeWords({ trouble })}.`;
}

const NOT_KEPT = {
	lock: 'A second copy of the program may be noticed only once it writes.',
	drafts: 'Texts that are typed and not yet entered may be lost with the program.',
	troubles: 'Troubles with the disk are not noted.',
	writer: 'This laptop counts as a new one at every start.',
} as const;

const DOUBTS: { readonly [trouble: string]: string } = {
	ELOOP: 'it is a link',
	NOT_OURS: 'it belongs to another user',
	OPEN_TO_OTHERS: 'other users may write into it',
};

/** That something is used all the same, and why it may not say what its owner wrote. */
export function doubtWords({
	path,
	trouble,
}: {
	readonly path: string;
	readonly trouble: string;
}): string {
	return `${path} is used, but ${DOUBTS[trouble] ?? diskTrouble(trouble)}: what is in it may not be yours`;
}

const THINGS: { readonly [kind: string]: string } = {
	file: 'a file',
	folder: 'a folder',
	link: 'a link',
	pipe: 'a pipe',
	socket: 'a socket',
	device: 'a device',
};

function thing(kind: string | null): string {
	return THINGS[kind ?? ''] ?? 'something';
}

function causeWords({ trouble }: { readonly trouble: string | null }): string {
	return trouble === null ? 'their file is damaged' : diskTrouble(trouble);
}

const makeYours = (path: string): string =>
	`Make it yours (sudo chown -R "$USER" ${path} && chmod -R u+rwX ${path}) and start again.`;

const WAYS_OUT: { readonly [code: string]: (path: string) => string } = {
	EACCES: makeYours,
	EPERM: makeYours,
	EMFILE: () => 'Raise the limit (ulimit -n 1024) and start again.',
	ENFILE: () => 'End other programs and start again.',
};

/**
 * An unfinished night that may be there and cannot be read, and what can be done about it; `shut`: what of its path
 * keeps us out, as a shell takes it.
 */
export function unreadableNightWords(fault: DiskFault, shut: string): string {
	if (fault.code === 'copy-gone') {
		return `${diskFaultWords(fault)} It cannot be read any more. If there is a copy of it, put that beside this file and start again.`;
	}
	const trouble = 'trouble' in fault ? (fault.trouble ?? '') : '';
	const way =
		WAYS_OUT[trouble]?.(shut) ?? 'If there is a copy of it, put that in its place and start again.';
	const what =
		fault.code === 'night-gone'
			? 'It may have been an unfinished night of this show.'
			: 'An unfinished night of this show may be in it.';
	return `${diskFaultWords(fault)} ${what} ${way}`;
}

/** What kept an export from being written, with what to do. */
export function exportProblem(
	fault: Extract<DiskFault, { code: 'file-exists' | 'export-failed' }>,
	option = '--out',
): Problem {
	const { code, path } = fault;
	return fault.code === 'file-exists'
		? {
				code,
				what: `${thing(fault.kind)} of that name is there already`,
				where: { file: path },
				hint:
					fault.kind === 'file'
						? `Name another file with ${option}, or replace it with --force.`
						: `Name another file with ${option}.`,
			}
		: {
				code,
				what: `this file could not be written: ${diskTrouble(fault.trouble)}`,
				where: { file: path },
				hint: `Name another place with ${option}.`,
			};
}

/** Why a night is not being kept just now, and what to do. */
export function saveProblemWords(problem: SaveProblem): string {
	switch (problem.code) {
		case 'slow':
			return 'The disk is slow: the last steps are written but not yet confirmed.';
		case 'memory-only':
			return `The night is in memory only: ${diskTrouble(problem.trouble)} in ${problem.folder}. Choose another folder with --data DIR.`;
		case 'unsaved':
			return `${capital(diskTrouble(problem.trouble))}. The night goes on in memory and is written as soon as that works.`;
	}
}

/** The same for one row: that the program alone has the last steps, then the reason. */
export function saveProblemInShort(problem: SaveProblem): string {
	if (problem.code === 'slow') return 'The disk is slow: the last steps are not confirmed.';
	return `In memory only, ${diskTrouble(problem.trouble)}.`;
}

/** Where a night is kept that its own folder does not take, and why. */
export function elsewhereWords({ folder, home, trouble, isWiped }: SavePlace): string {
	const lead = isWiped ? 'Written, not safe: ' : '';
	const wiped = isWiped ? ', which a restart of the machine empties' : '';
	const why = trouble === null ? '' : `, ${diskTrouble(trouble)}`;
	const words = `${lead}the night is kept in ${folder}${wiped}, since ${home} takes nothing${why}.`;
	return `${capital(words)} It goes back by itself as soon as that folder takes it.`;
}

/** The same in one row: both folders stay readable at their ends. */
export function elsewhereInShort({ folder, home, trouble }: SavePlace, columns: number): string {
	const why = trouble === null ? '' : `${trouble} in `;
	const words = (one: string, other: string) => `kept in ${one}, ${why}${other}`;
	const room = columns - displayWidth(words('', ''));
	// Where there is no room for both, where the night is comes first.
	if (room < 2 * LEAST_PATH_COLUMNS) return `kept in ${shortPath(folder, columns - 8)}`;
	const least = Math.min(displayWidth(home), LEAST_PATH_COLUMNS);
	const first = shortPath(folder, room - least);
	return words(first, shortPath(home, room - displayWidth(first)));
}

/** Words for one row: where they are too long their paths are, so that what is said of them stays in sight. */
export function inOneRow(words: string, columns: number): string {
	let over = displayWidth(words) - columns;
	return words.replaceAll(/[^\s(]*\/[^\s),;:]*/g, (path) => {
		const width = displayWidth(path);
		const cut = Math.min(over, width - LEAST_PATH_COLUMNS);
		if (cut <= 0) return path;
		over -= cut;
		return shortPath(path, width - cut);
	});
}

/** A path cut to fewer cells than these says nothing. */
const LEAST_PATH_COLUMNS = 16;

/** A path with its middle left out where it is too long. */
function shortPath(path: string, columns: number): string {
	if (displayWidth(path) <= columns) return path;
	const head = /^\/[^/]*\//.exec(path)?.[0] ?? '';
	const begin = head.length < columns / 4 ? head : '';
	return `${begin}…${[...path].slice(begin.length + 1 - columns).join('')}`;
}

/** Where no home is known, of the folder that is used instead. */
export const noHomeWords = (folder: string): string =>
	`This system knows no home folder of yours, so nights are in ${folder}, which a restart of the machine empties. Start with --data and a folder that stays.`;

/** Of a night whose own folder a restart of the machine empties. */
export function wipedHomeWords(folder: string): string {
	return `Written, not safe: a restart of the machine empties ${folder}, the night's own folder. Copy it away before one; next time, start with --data and a folder that stays.`;
}

/** The same in one row. */
export function wipedHomeInShort(folder: string, columns: number): string {
	const words = (path: string) => `a restart of the machine empties ${path}`;
	return words(shortPath(folder, Math.max(LEAST_PATH_COLUMNS, columns - displayWidth(words('')))));
}

/** Of a night in the list, that its newest steps are in another folder than its own. */
export function liesElsewhere(folder: string, isWiped: boolean): string {
	return `${liesIn(folder, isWiped)} Start its show again to bring it back.`;
}

/** Of a night in the list, that it is not safe in its own folder. */
export function liesUnsafe(folder: string): string {
	return `${liesIn(folder, true)} Copy it away before one.`;
}

function liesIn(folder: string, isWiped: boolean): string {
	const what = isWiped ? ', not safe: a restart of the machine empties that folder' : '';
	return `It is in ${folder}${what}.`;
}

/** Why not everything of a night is safe that is left now, and what to do. */
export function leftElsewhere({ folder, home, trouble, isWiped }: SavePlace): string {
	const why = trouble === null ? '' : `, ${diskTrouble(trouble)}`;
	const where = `The night is in ${folder}, since ${home} takes nothing${why}.`;
	const what = isWiped
		? `It is written, not safe: a restart of the machine empties that folder. Put ${home} right and start this show again before one, or copy the folder away.`
		: `Put ${home} right and start this show again: the night goes back by itself.`;
	return `${where} ${what}`;
}

/** What was noticed about a night's file while it was open. */
export function saveWarningWords(warning: SaveWarning): string {
	switch (warning.code) {
		case 'file-left':
			return `The night's file could not be written any more, ${diskTrouble(warning.trouble)}; the night goes on in a new one.`;
		case 'not-confirmed':
			return `The disk did not confirm what was written, ${diskTrouble(warning.trouble)}; the night goes on in a new file.`;
		case 'not-seen':
			return `The folder of the night's file could not be looked into, ${diskTrouble(warning.trouble)}: the steps are written, but may not be found at the next start.`;
		case 'file-changed': {
			const what = warning.change === 'gone' ? 'moved or removed' : 'cut short';
			return `The night's file was ${what} by somebody else (${warning.path}); the whole night is written again beside it.`;
		}
		case 'moved-back':
			return `The night is whole again in ${warning.folder}; what ${warning.from} has of it is a copy.`;
		case 'written-by-other':
			return warning.writer === null
				? "Something else wrote into this night's file; its records are still whole."
				: `Another copy of the program is writing into this night too: end one of them (that is ${warning.writer}).`;
	}
}

/** The same for one row. */
export function saveWarningInShort(warning: SaveWarning, columns: number): string {
	const isCopy = warning.code === 'written-by-other' && warning.writer !== null;
	return isCopy
		? 'Another copy writes into this night: end one of them.'
		: inOneRow(saveWarningWords(warning), columns);
}
