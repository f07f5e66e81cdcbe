// The night that a live screen opens: an unfinished one of this show taken up again, else a new one.
// The show file is read only for a new night, since a night carries its own copy.

import { createHash, randomBytes } from 'node:crypto';
import { resolve } from 'node:path';
import type { MachineClock } from '../base/machine-clock.ts';
import type { Problem } from '../base/problem.ts';
import { createNightFile } from '../disk/create-night-file.ts';
import { nightId } from '../disk/night-id.ts';
import type { NightServices } from '../disk/night-services.ts';
import { listNights, unfinishedNight } from '../disk/nights-folder.ts';
import { openNightFile } from '../disk/open-night-file.ts';
import { showIdentity } from '../disk/paths.ts';
import { realDisk } from '../disk/real-disk.ts';
import type { NightJournal } from '../journal/night-journal.ts';
import { keptShow } from '../showfile/kept-show.ts';
import type { Show } from '../showfile/show.ts';
import type { Request } from './command.ts';
import type { Io } from './io.ts';
import { isFinished } from './night-on-disk.ts';

export type NightToBegin = {
	/** The show file as it was typed. */
	readonly file: string;
	readonly folders: readonly string[];
	readonly request: Request;
	readonly isRehearsal: boolean;
	readonly clock: MachineClock;
	readonly release: () => void;
};

export type BegunNight = {
	readonly id: string;
	readonly show: Show;
	readonly journal: NightJournal;
	/** Wall clock of its beginning. */
	readonly startedAtMs: number;
	/** What was noticed about its file, a sentence each. */
	readonly findings: readonly string[];
};

/** The night to go on with, or the problems of the show file. */
export async function beginNight(
	wanted: NightToBegin,
	io: Io,
): Promise<BegunNight | { readonly problems: readonly Problem[] }> {
	const { clock, folders } = wanted;
	const services: NightServices = {
		disk: realDisk,
		folders,
		wait: (milliseconds) => new Promise((done) => setTimeout(done, milliseconds)),
		writer: randomBytes(6).toString('hex'),
		upMs: clock.upMs(),
		release: wanted.release,
	};
	const taken = takeUp(services, wanted, io);
	if (taken) return taken;
	const { openShow } = await import('./open-show.ts');
	const { show, problems, path } = await openShow(wanted.file, wanted.request, io);
	if (!show) return { problems };
	const text = JSON.stringify(show);
	const startedAtMs = clock.wallMs();
	const id = nightId({
		title: show.title,
		startedAt: new Date(startedAtMs),
		chance: randomBytes(2).toString('hex'),
	});
	const { journal } = await createNightFile(services, {
		id,
		wallMs: startedAtMs,
		subject: {
			boot: clock.bootId,
			title: show.title,
			showPath: showIdentity(path),
			showHash: createHash('sha256').update(text).digest('hex'),
			show,
			isRehearsal: wanted.isRehearsal,
		},
	});
	return { id, show, journal, startedAtMs, findings: [] };
}

function takeUp(services: NightServices, wanted: NightToBegin, io: Io): BegunNight | null {
	const unfinished = unfinishedNight(listNights(realDisk, services.folders), {
		showPath: showIdentity(resolve(io.cwd, wanted.file)),
		isRehearsal: wanted.isRehearsal,
		isFinished: (night) => isFinished(night.lastRecords),
	});
	const show = keptShow(unfinished?.header?.show);
	if (!unfinished || !show) return null;
	const opened = openNightFile(services, { id: unfinished.id });
	if (!opened.journal) return null;
	return {
		id: unfinished.id,
		show,
		journal: opened.journal,
		startedAtMs: unfinished.startedAtMs ?? services.upMs,
		findings: opened.findings.filter(({ isWarning }) => isWarning).map(({ text }) => text),
	};
}
