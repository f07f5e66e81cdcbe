// What the program itself finds: its folder and disk, the nights, its own troubles, versions.

import { tmpdir } from 'node:os';
import type { DiskFault } from '../../base/disk-fault.ts';
import type { NightSummary } from '../../disk/nights-folder.ts';
import { isWipedByRestart } from '../../disk/paths.ts';
import type { Trouble } from '../../disk/trouble-log.ts';
import { diskFaultWords } from '../../words/disk.ts';
import {
	FINISH_NIGHTS,
	FOLDER_FIX,
	FOLDER_WIPED,
	folderFound,
	NIGHTS_UNREAD,
	NO_OWN_TROUBLES,
	NO_UNFINISHED,
	NOT_TOLD,
	NOT_TRIED,
	SEE_NIGHTS,
	SEE_TROUBLES,
	SPACE_LOW,
	SYNC_SLOW,
	SYNC_TOO_SLOW,
	spaceFound,
	syncFound,
	troublesFound,
	troublesOld,
	unfinishedFound,
	versionsFound,
	WHAT,
} from '../../words/doctor.ts';
import { troubleWords } from '../../words/trouble-log.ts';
import { localDay, localMoment } from '../local-day.ts';
import type { Machine } from '../machine.ts';
import { isFinished } from '../nights/night-on-disk.ts';
import { type DoctorLine, fine, look, unknown } from './doctor-line.ts';

/** Whether the folder of all that is kept is the user's own and stays; `doubts`: why it may not be. */
export function folderLine(folder: string, doubts: readonly DiskFault[]): DoctorLine {
	const [doubt] = doubts;
	if (doubt) return look(WHAT.folder, diskFaultWords(doubt), FOLDER_FIX);
	return isWipedByRestart(folder, tmpdir())
		? look(WHAT.folder, folder, FOLDER_WIPED)
		: fine(WHAT.folder, folderFound(folder));
}

/** The next press of a key that counts comes no sooner: what a step may take to be confirmed before it. */
const KEYS_APART_MS = 300;
/** From then on the live screen calls the disk slow. */
const SLOW_MS = 1000;

/** Whether a key is safe before the next one; `trial`: milliseconds of each try, or why there was none. */
export function syncLine(trial: readonly number[] | DiskFault): DoctorLine {
	if ('code' in trial) return look(WHAT.sync, diskFaultWords(trial), FOLDER_FIX);
	const sorted = trial.toSorted((one, other) => one - other);
	const median = sorted[Math.floor(sorted.length / 2)];
	const worst = sorted.at(-1);
	if (median === undefined || worst === undefined) return unknown(WHAT.sync, NOT_TRIED, null);
	const found = syncFound(median, worst);
	if (worst <= KEYS_APART_MS) return fine(WHAT.sync, found);
	return look(WHAT.sync, found, worst > SLOW_MS ? SYNC_TOO_SLOW : SYNC_SLOW);
}

/** A night takes up to a few megabytes, a full disk stops all else of the machine too (common practice). */
const LEAST_BYTES = 100_000_000;

/** What is free where nights are kept. */
export function spaceLine(bytes: number | null): DoctorLine {
	if (bytes === null) return unknown(WHAT.space, NOT_TOLD, null);
	const found = spaceFound(bytes);
	return bytes < LEAST_BYTES ? look(WHAT.space, found, SPACE_LOW) : fine(WHAT.space, found);
}

/** Nights left open; `isPart` where there may be others in a folder that cannot be listed. */
export function nightsLine(nights: readonly NightSummary[], isPart: boolean): DoctorLine {
	if (isPart || nights.some(({ header }) => header === null))
		return look(WHAT.nights, NIGHTS_UNREAD, SEE_NIGHTS);
	const titles = nights.flatMap(({ header, lastRecords }) =>
		header === null || header.isRehearsal || isFinished(lastRecords) ? [] : [header.title],
	);
	return titles.length === 0
		? fine(WHAT.nights, NO_UNFINISHED)
		: look(WHAT.nights, unfinishedFound(titles), FINISH_NIGHTS);
}

/** What is older was on another tour's disk, or long mended. */
const RECENT_DAYS = 30;
const DAY_MS = 86_400_000;

/** The log of troubles, as far as it is of late; `fault` where it cannot be read. */
export function troublesLine(
	{ troubles, fault }: { readonly troubles: readonly Trouble[]; readonly fault: DiskFault | null },
	{ wallMs, offsetMinutes }: { readonly wallMs: number; readonly offsetMinutes: number },
): DoctorLine {
	if (fault) return look(WHAT.troubles, diskFaultWords(fault), FOLDER_FIX);
	const last = troubles.at(-1);
	if (last === undefined) return fine(WHAT.troubles, NO_OWN_TROUBLES);
	const recent = troubles.filter(({ atMs }) => wallMs - atMs < RECENT_DAYS * DAY_MS);
	if (recent.length === 0)
		return fine(WHAT.troubles, troublesOld(localDay(last.atMs, offsetMinutes)));
	const words = troubleWords(last).replace(/\.$/, '');
	return look(
		WHAT.troubles,
		troublesFound(recent.length, words, localMoment(last.atMs, offsetMinutes)),
		SEE_TROUBLES,
	);
}

/** Of the program, Node and the system: what whoever helps asks first. */
export function versionsLine(machine: Machine): DoctorLine {
	return fine(WHAT.versions, versionsFound(machine));
}
