// The night that a live screen opens: an unfinished one of this show taken up again, else a new one.
// The show file is read only for a new night, and for one whose own copy is lost.

import { createHash } from 'node:crypto';
import { tmpdir } from 'node:os';
import { dirname, resolve } from 'node:path';
import type { DiskFault } from '../../base/disk-fault.ts';
import type { MachineClock } from '../../base/machine-clock.ts';
import type { Problem } from '../../base/problem.ts';
import { createNightFile } from '../../disk/create-night-file.ts';
import { whereShut } from '../../disk/folders.ts';
import { nightId } from '../../disk/night-id.ts';
import type { NightServices } from '../../disk/night-services.ts';
import {
	headlessNight,
	listNights,
	type NightList,
	type NightSummary,
	unfinishedNight,
	unreadableNight,
} from '../../disk/nights-folder.ts';
import { lookAtNight, openNightFile } from '../../disk/open-night-file.ts';
import { isWipedByRestart, showIdentity } from '../../disk/paths.ts';
import { randomHex } from '../../disk/random-hex.ts';
import { realDisk } from '../../disk/real-disk.ts';
import type { TroubleLog } from '../../disk/trouble-log.ts';
import { writerId } from '../../disk/writer-id.ts';
import type { Finding } from '../../journal/findings.ts';
import type { NightJournal } from '../../journal/night-journal.ts';
import type { NightSubject } from '../../journal/record.ts';
import type { Show } from '../../showfile/show.ts';
import { keptShow, showRecord } from '../../showfile/show-record.ts';
import { diskFaultWords, unreadableNightWords } from '../../words/disk.ts';
import { nightFindingWords, notTakenUpWords } from '../../words/night-file.ts';
import type { Request } from '../command.ts';
import type { Io } from '../io.ts';
import { isFinished } from '../nights/night-on-disk.ts';
import { shellWord } from '../shell/shell-word.ts';

export type NightToBegin = {
	/** The show file as it was typed. */
	readonly file: string;
	readonly folders: readonly string[];
	readonly request: Request;
	readonly isRehearsal: boolean;
	/** A new night is wanted where an unfinished one cannot be read. */
	readonly isAnew: boolean;
	readonly clock: MachineClock;
	readonly release: () => void;
	/** What the show is made before the night begins, for a new one alone; the file's own when left out. */
	readonly asPlayed?: (show: Show) => Show;
	/** Where troubles with the disk are noted; nowhere when left out. */
	readonly log?: TroubleLog;
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

/** Why it is for the user to say whether a new night begins: an unfinished one cannot be read. */
export type Unreadable = { readonly unreadable: string };

/** The night to go on with, the problems of the show file, or what has to be decided first. */
export async function beginNight(
	wanted: NightToBegin,
	io: Io,
): Promise<BegunNight | Unreadable | { readonly problems: readonly Problem[] }> {
	const { clock, folders } = wanted;
	const services: NightServices = {
		disk: realDisk,
		folders,
		isWiped: (folder) => isWipedByRestart(folder, tmpdir()),
		wait: (milliseconds) => new Promise((done) => setTimeout(done, milliseconds)),
		writer: writerId(realDisk, dirname(folders[0] ?? '.')),
		upMs: clock.upMs(),
		release: wanted.release,
		...(wanted.log && { onStatus: wanted.log.status }),
	};
	const list = listNights(realDisk, folders);
	const { unfinished, headless, hidden } = nightsOf(list, wanted, io);
	const copy = keptShow(unfinished?.header?.show);
	const title = unfinished?.header?.title ?? '';
	const isNewest = headless(title) === null && hidden(title) === null;
	const taken = unfinished && copy && isNewest && takeUp(services, unfinished, { show: copy });
	if (taken) return noted(taken, wanted.log);
	const { openShow } = await import('../show-commands.ts');
	const { show: opened, problems, path } = await openShow(wanted.file, wanted.request, io);
	if (!opened) return { problems };
	const show = wanted.asPlayed?.(opened) ?? opened;
	const record = showRecord(show);
	const subject: NightSubject = {
		boot: clock.bootId,
		title: show.title,
		showPath: showIdentity(path),
		showHash: createHash('sha256').update(JSON.stringify(record)).digest('hex'),
		show: record,
		isRehearsal: wanted.isRehearsal,
	};
	const without = headless(show.title) ?? unfinished;
	const barrier = hidden(show.title);
	const mended = barrier === null && without && takeUp(services, without, { show, subject });
	if (mended) return noted(mended, wanted.log);
	const unreadable = barrier ?? notTakenUp(services, without);
	if (unreadable !== null && !wanted.isAnew) {
		wanted.log?.note('night-unreadable');
		return { unreadable };
	}
	const startedAtMs = clock.wallMs();
	const id = nightId({
		title: show.title,
		startedAt: new Date(startedAtMs),
		chance: randomHex(2),
	});
	const { journal } = await createNightFile(services, {
		id,
		wallMs: startedAtMs,
		subject,
	});
	return { id, show, journal, startedAtMs, findings: list.unlisted.map(diskFaultWords) };
}

/** The unfinished night of this show file, and one that only its title may tell to be so. */
function nightsOf({ nights, unlisted }: NightList, wanted: NightToBegin, io: Io) {
	const showPath = showIdentity(resolve(io.cwd, wanted.file));
	const { isRehearsal } = wanted;
	const finished = (night: NightSummary) => isFinished(night.lastRecords);
	const newest = unfinishedNight(nights, { showPath, isRehearsal, isFinished: () => false });
	const unfinished = wanted.asPlayed
		? null
		: unfinishedNight(nights, { showPath, isRehearsal, isFinished: finished });
	// Where the other folder cannot be seen, an unfinished night in its own is gone on with, and that is said.
	const [home] = wanted.folders;
	const unseen = unlisted.find(({ path }) => path === home || unfinished === null);
	return {
		unfinished,
		// Nor is a rehearsal worth a question.
		hidden: (title: string) => {
			if (isRehearsal) return null;
			const night = unreadableNight(nights, { title, after: newest?.id ?? '' });
			const fault = night?.problem ?? unseen;
			return fault ? unreadableNightWords(fault, shellWord(shutBy(fault))) : null;
		},
		// Whether a night without a header was a rehearsal nobody can say; a show must go on.
		headless: (title: string) =>
			isRehearsal
				? null
				: headlessNight(nights, { title, after: newest?.id ?? '', isFinished: finished }),
	};
}

/** What of its path keeps us out of what cannot be read. */
function shutBy(fault: DiskFault): string {
	return 'path' in fault ? whereShut(realDisk, fault.path) : '';
}

/** Why a night that is there was not taken up; null where there is none. */
function notTakenUp(services: NightServices, night: NightSummary | null): string | null {
	if (night === null) return null;
	const { findings } = lookAtNight(services, { id: night.id });
	return notTakenUpWords(night.path, findings);
}

type StandIn = {
	/** The night's own copy, read before; with a header for it, the show to go by where it has none. */
	readonly show: Show;
	/** What the night gets a header from when its own is lost. */
	readonly subject?: NightSubject;
};

/** Notes what was found on opening the night's files. */
function noted({ found, ...night }: BegunNight & Found, log: TroubleLog | undefined): BegunNight {
	for (const finding of found) {
		const { code } = finding;
		const { trouble, bytes, count } = { trouble: null, bytes: null, count: null, ...finding };
		log?.note(code, trouble ?? bytes ?? count);
	}
	return night;
}

type Found = { readonly found: readonly Finding[] };

/** Goes on with a night; null where it cannot be written into. */
function takeUp(
	services: NightServices,
	{ id }: NightSummary,
	{ show, subject }: StandIn,
): (BegunNight & Found) | null {
	const opened = openNightFile(services, { id, ...(subject && { spareHeader: subject }) });
	if (!opened.journal) return null;
	return {
		id,
		// Where there is no other header, what to go by is its own copy; checking a show takes milliseconds.
		show: (subject && keptShow(opened.header?.show)) ?? show,
		journal: opened.journal,
		startedAtMs: opened.startedAtMs ?? opened.records()[0]?.t ?? services.upMs,
		findings: opened.findings.map(nightFindingWords),
		found: opened.findings,
	};
}
