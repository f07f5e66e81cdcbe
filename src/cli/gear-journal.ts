// The gear journal on disk: one file for all shows in the data folder, kept with the same lines and the
// same care as a night.

import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import { realClock } from '../disk/clock.ts';
import { createNightFile } from '../disk/create-night-file.ts';
import { takeLock } from '../disk/lock.ts';
import type { NightServices } from '../disk/night-services.ts';
import { lookAtNight, openNightFile } from '../disk/open-night-file.ts';
import type { Paths } from '../disk/paths.ts';
import { realDisk } from '../disk/real-disk.ts';
import { GEAR_ID, type GearEntry, measuredOn } from '../journal/gear-entry.ts';
import type { JournalRecord } from '../journal/record.ts';
import { saveProblemWords } from '../words/disk.ts';
import { nightFindingWords } from '../words/night-file.ts';

function gearFolder({ data }: Paths): string {
	return join(data, 'gear');
}

export type GearOnDisk = {
	readonly records: readonly JournalRecord[];
	/** What was noticed about the file, a sentence each; none when nothing was ever measured. */
	readonly findings: readonly string[];
};

/** Everything that was measured, oldest first. */
export function readGear(paths: Paths): GearOnDisk {
	const found = lookAtNight({ disk: realDisk, folders: [gearFolder(paths)] }, { id: GEAR_ID });
	const findings = found.findings.filter(
		({ code, isWarning }) => isWarning && code !== 'night-missing',
	);
	return { records: found.records(), findings: findings.map(nightFindingWords) };
}

/** What was measured on an instrument, the newest first, read from the disk when first asked for. */
export function measuredOnGear(paths: Paths): (instrument: string) => readonly GearEntry[] {
	let records: readonly JournalRecord[] | null = null;
	return (instrument) => {
		records ??= readGear(paths).records;
		return measuredOn(records, instrument);
	};
}

/** Keeps one measurement; null when the disk has confirmed it, else one sentence that says why not. */
export async function keepMeasured(paths: Paths, entry: GearEntry): Promise<string | null> {
	const folder = gearFolder(paths);
	const lock = await takeLock({ disk: realDisk, folder, name: GEAR_ID });
	if (!lock.isHeld) return 'another copy of the program is writing what it measured; try again.';
	const clock = realClock();
	const services: NightServices = {
		disk: realDisk,
		folders: [folder],
		wait: (milliseconds) => new Promise((done) => setTimeout(done, milliseconds)),
		writer: randomBytes(6).toString('hex'),
		upMs: clock.upMs(),
		release: lock.release,
	};
	const opened = openNightFile(services, { id: GEAR_ID });
	const isNew = opened.findings.some(({ code }) => code === 'night-missing');
	if (!opened.journal && !isNew) {
		lock.release();
		return opened.findings.map(nightFindingWords).join(' ') || 'the gear journal cannot be read.';
	}
	const subject = { title: 'Gear', showPath: '', showHash: '', show: null, isRehearsal: false };
	const journal =
		opened.journal ??
		(
			await createNightFile(services, {
				id: GEAR_ID,
				wallMs: entry.at,
				subject: { ...subject, boot: clock.bootId },
			})
		).journal;
	journal.append([entry], { wallMs: entry.at, upMs: clock.upMs() });
	const status = await journal.close();
	if (status.isSaved) return null;
	return status.problem === null
		? 'the disk did not confirm it in time.'
		: saveProblemWords(status.problem);
}
