// What a night's files say about their own past: one whole sentence each.

import type { Finding } from '../journal/findings.ts';
import { diskTrouble, doubtWords } from './disk.ts';

/** The same on the screen, in the report and in the list of nights. */
export function nightFindingWords(finding: Finding): string {
	switch (finding.code) {
		case 'night-missing':
			return `There is no night called ${finding.id}.`;
		case 'file-unreadable':
			return `${finding.path} cannot be read: ${diskTrouble(finding.trouble)}.`;
		case 'file-doubtful':
			return `${doubtWords(finding)}.`;
		case 'header-missing':
			return finding.isEmpty
				? "The night's file is empty: there is nothing in it to resume."
				: 'The beginning of the night cannot be read, nor its copy of the show; the show file is used in its place.';
		case 'records-missing':
			return finding.isHealed
				? `${records(finding.count)} of this night cannot be read; how things stand now is not touched by it.`
				: `${records(finding.count)} of this night cannot be read: check what is on the rack and in hands.`;
		case 'steps-not-kept': {
			const [steps, them] =
				finding.count === 1 ? ['step', 'it'] : [`${finding.count} steps`, 'them'];
			return `The last ${steps} of this night ${were(finding.count)} not kept: the disk did not take ${them} before it was left, or its file was cut short since. Check what is on the rack and in hands.`;
		}
		case 'record-quarantined':
			return finding.count > 1
				? `The last ${finding.count} records cannot be read, though they may have been shown as saved: check the last steps.`
				: 'The last record cannot be read, though it may have been shown as saved: check the last step.';
		case 'two-writers':
			return `Two copies of the program wrote into this night at once; ${records(finding.count)} of one of them ${were(finding.count)} left aside.`;
		case 'newer-format':
			return 'This night was recorded by a newer version of the program: it can be looked at, but not resumed.';
		case 'foreign-records': {
			const belong = finding.count === 1 ? 'belongs' : 'belong';
			return `${records(finding.count)} in this night's file ${belong} to another night and ${were(finding.count)} left aside.`;
		}
		case 'bytes-damaged': {
			const places = finding.count === 1 ? 'A place' : `${finding.count} places`;
			const are = finding.count === 1 ? 'is' : 'are';
			return `${places} in the night's file ${are} damaged, but no record is missing.`;
		}
		case 'copy-gone':
			return 'The last steps are missing: they were kept in another folder, since its own took nothing, and are gone from there.';
		case 'tail-cut-off':
			return incompleteWords(finding);
	}
}

/** An unfinished night that cannot be taken up, and what can be done about it. */
export function notTakenUpWords(path: string, findings: readonly Finding[]): string {
	const why = findings.map(nightFindingWords).join(' ');
	return `${path} cannot be read as the unfinished night of this show. ${why}`;
}

/** That the end of a night was cut off: how many bytes, and where they are. */
function incompleteWords(torn: {
	readonly bytes: number | null;
	readonly isZero: boolean;
	readonly keptIn: string | null;
}): string {
	const { bytes, isZero, keptIn } = torn;
	const count = `${bytes ?? 'some'} ${isZero ? 'zero ' : ''}byte${bytes === 1 ? '' : 's'}`;
	const where = keptIn === null ? 'left out' : `now in ${keptIn}`;
	return `Incomplete: the night was cut off in the middle of a write (${count}, ${where}). The last keys may be missing.`;
}

function records(count: number): string {
	return count === 1 ? '1 record' : `${count} records`;
}

function were(count: number): string {
	return count === 1 ? 'was' : 'were';
}
