// The gear journal on disk: a file for each laptop in a folder of its own, for all shows, kept with the same
// lines and the same care as a night. What is known is what all of them hold together.

import { join } from 'node:path';
import { realClock } from '../../disk/clock.ts';
import { createNightFile } from '../../disk/create-night-file.ts';
import { takeLock } from '../../disk/lock.ts';
import type { NightServices } from '../../disk/night-services.ts';
import { lookAtNight, openNightFile } from '../../disk/open-night-file.ts';
import { folderDoubts } from '../../disk/own-file.ts';
import type { Paths } from '../../disk/paths.ts';
import { type FolderName, namesIn, segmentFiles } from '../../disk/read-night.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { parseSegmentName, segmentFileName } from '../../disk/segment-name.ts';
import { laptopId, writerId } from '../../disk/writer-id.ts';
import type { GearEntry, Measured, Rang } from '../../gear/gear-entry.ts';
import { gearId } from '../../gear/gear-id.ts';
import { remembered } from '../../gear/remembered.ts';
import { inOrder } from '../../journal/record-order.ts';
import type { Instrument } from '../../showfile/show.ts';
import { diskFaultWords } from '../../words/disk.ts';
import {
	gearClosedWords,
	gearFindingWords,
	gearFolderWords,
	gearProblemWords,
	MAY_BE_MISSING,
	NOT_CONFIRMED,
	OTHER_WRITES,
} from '../../words/gear-journal.ts';

function gearFolder({ data }: Paths): string {
	return join(data, 'gear');
}

export type GearOnDisk = {
	/** Everything that was written down, oldest first, whichever laptop wrote it. */
	readonly entries: readonly GearEntry[];
	/** What was noticed about the folder and its files, a sentence each; none when nothing was ever measured. */
	readonly findings: readonly string[];
};

/** The union of all files in the folder. */
export function readGear(paths: Paths): GearOnDisk {
	const folder = gearFolder(paths);
	const { names, unlisted } = namesIn(realDisk, [folder]);
	const found = journalsIn(names).map((id) => ({
		night: lookAtNight({ disk: realDisk, folders: [folder] }, { id }),
		file: segmentFiles(names, id)
			.map(({ path }) => path)
			.join(' and '),
	}));
	const records = inOrder(found.flatMap(({ night }) => night.records()));
	const doubts = folderDoubts(realDisk, folder);
	const isUnusable = doubts.some(({ code }) => code === 'folder-unusable');
	const unread = isUnusable
		? []
		: unlisted.map((one) => ({ code: 'file-unreadable' as const, ...one }));
	return {
		entries: records.flatMap(({ e }) => e as readonly GearEntry[]),
		findings: [
			...[...doubts, ...unread].map((one) =>
				one.code === 'folder-doubtful'
					? diskFaultWords(one)
					: `${diskFaultWords(one)} ${MAY_BE_MISSING}`,
			),
			...found.flatMap(({ night, file }) => gearFindingWords(file, night.findings)),
		],
	};
}

function journalsIn(names: readonly FolderName[]): readonly string[] {
	const ids = names.map(({ name }) => parseSegmentName(name)?.id ?? null);
	return [...new Set(ids.filter((id) => id !== null))].sort();
}

export type MeasuredBefore = {
	/** What was measured on an instrument, the newest first. */
	readonly measuredOn: (instrument: Instrument) => readonly Measured[];
	/** Hertz that an instrument rang at, the newest first. */
	readonly ringsOn: (instrument: Instrument) => readonly number[];
	/** What instruments rang at, with the nights that noted it; those at the bench left out. */
	readonly noted: readonly Rang[];
	/** As in `GearOnDisk`. */
	readonly findings: readonly string[];
};

/** What was measured on the instruments of a show file in this folder, as it stands on the disk now. */
export function measuredOnGear(paths: Paths, folder: string): MeasuredBefore {
	const { entries, findings } = readGear(paths);
	const of = (instrument: Instrument) =>
		remembered(entries, { gear: gearId(instrument, folder), instrument });
	return {
		measuredOn: (instrument) => of(instrument).past,
		ringsOn: (instrument) => of(instrument).rings,
		noted: entries.filter(
			(one): one is Rang => one.k === 'feedback-noted' && one.note !== undefined,
		),
		findings,
	};
}

/** Keeps one entry; null when the disk has confirmed it, else one sentence that says why not. */
export async function keepGear(paths: Paths, entry: GearEntry): Promise<string | null> {
	const folder = gearFolder(paths);
	const closed = folderDoubts(realDisk, folder).find(
		({ code, trouble }) => code === 'folder-unusable' || trouble === 'ELOOP',
	);
	if (closed) return gearFolderWords(closed);
	const id = `gear-${laptopId(realDisk, paths.data)}`;
	const lock = await takeLock({ disk: realDisk, folder, name: id });
	if (!lock.isHeld) return OTHER_WRITES;
	const clock = realClock();
	const services: NightServices = {
		disk: realDisk,
		folders: [folder],
		// Each entry is confirmed by the disk, or said not to be, before the program ends.
		isEndMarked: false,
		wait: (milliseconds) => new Promise((done) => setTimeout(done, milliseconds)),
		writer: writerId(realDisk, paths.data),
		upMs: clock.upMs(),
		release: lock.release,
	};
	const opened = openNightFile(services, { id });
	const isNew = opened.findings.some(({ code }) => code === 'night-missing');
	if (!opened.journal && !isNew) {
		lock.release();
		return gearClosedWords(join(folder, segmentFileName({ id, number: 1 })), opened.findings);
	}
	const subject = { title: 'Gear', showPath: '', showHash: '', show: null, isRehearsal: false };
	const journal =
		opened.journal ??
		(
			await createNightFile(services, {
				id,
				wallMs: entry.at,
				subject: { ...subject, boot: clock.bootId },
			})
		).journal;
	journal.append([entry], { wallMs: entry.at, upMs: clock.upMs() });
	const status = await journal.close();
	if (status.isSaved) return null;
	return status.problem === null ? NOT_CONFIRMED : gearProblemWords(status.problem);
}
