// Power cuts of a program that keeps a night: its calls are written down by strace(1) and made again on a disk
// in memory, which is cut off after any of them. Nothing that was shown as saved may be missing then.

import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import type { NightServices } from '../../src/disk/night-services.ts';
import { lookAtNight, openNightFile } from '../../src/disk/open-night-file.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { type FaultDisk, settle } from '../disk/fault-disk.ts';
import { nightName, stepEntry, stepsOf } from '../disk/night-steps.ts';
import { chance } from '../plan/oracle/chance.ts';
import { saidIn } from './kill-rounds.ts';
import type { OwnFolder } from './own-folder.ts';
import { cutAt, ReplayedDisk, type Survival, survivalBy } from './replayed-disk.ts';
import { TRACE_FLAGS, type TracedCall, tracedCalls } from './traced-calls.ts';

const program = fileURLToPath(new URL('kill-writer.ts', import.meta.url));

/** What fails in a night beside the power: calls in strace's words, or files that may not grow (`ulimit -f`). */
export type Failing = { readonly inject?: string; readonly blocks?: number };

/** Nights to be cut. */
export const NIGHTS: readonly Failing[] = [
	{},
	{ inject: 'fdatasync:error=EIO:when=2' },
	{ inject: 'fdatasync:error=EIO:when=3+4' },
	{ inject: 'mkdir:error=ENOSPC:when=1' },
	{ inject: 'rename:error=EIO:when=1' },
	{ blocks: 8 },
];

export type PowerCuts = {
	readonly own: OwnFolder;
	readonly name: string;
	/** What fails besides: of `NIGHTS`. */
	readonly failing: Failing;
	/** Steps in each of the two runs of the program. */
	readonly steps: number;
	/** How many cuts by chance. */
	readonly count: number;
	readonly seed: number;
	/** Whether the last write is also cut after each of its bytes. */
	readonly isEachByte: boolean;
	/** Whether the disk's word counts for nothing: then something must be found missing. */
	readonly isLying?: boolean;
};

export type PowerCutResult = {
	readonly calls: number;
	readonly cuts: number;
	readonly faults: readonly string[];
};

/** A night begun and taken up again, and cut off so many times after any of its calls. */
export async function powerCuts(wanted: PowerCuts): Promise<PowerCutResult> {
	const root = wanted.own.below(wanted.name);
	const folders = [`${root}/nights`, `${root}/spare`];
	const traces = ['writer-1', 'writer-2'].map((writer) =>
		tracedCalls(trace(wanted, { writer, folders })),
	);
	const each = Math.ceil(wanted.count / changesIn(traces, root));
	const by = chance(wanted.seed);
	const disk = new ReplayedDisk(root);
	const faults: string[] = [];
	let cuts = 0;
	let said = '';
	let made = 0;
	const cut = async (survival: Survival, how: string): Promise<void> => {
		cuts += 1;
		const after = disk.afterPowerCut(survival);
		const { typed, saved } = saidIn(said);
		const found = await takenUp(after, { folders, typed, saved });
		faults.push(...found.map((fault) => `${wanted.name}, call ${made}, ${how}: ${fault}`));
	};
	for (const calls of traces) {
		disk.startAnew();
		for (const call of calls) {
			made += 1;
			if (call.name === 'write' && call.numbers[0] === 1 && call.part !== 'begins') {
				said += String(call.texts[0]);
			}
			const isSync = call.name === 'fdatasync' || call.name === 'fsync';
			if ((isSync && wanted.isLying) || !disk.make(call)) continue;
			for (let number = 0; number < each; number += 1) {
				await cut(survivalBy(by), `cut ${number} of seed ${wanted.seed}`);
			}
			if (!wanted.isEachByte || call.name !== 'write') continue;
			for (let bytes = 0; bytes < disk.pendingBytes(); bytes += 1) {
				await cut(cutAt(bytes), `after byte ${bytes}`);
			}
		}
	}
	return { calls: made, cuts, faults };
}

/** How many of the calls change what is on the disk, or make it last. */
function changesIn(traces: readonly (readonly TracedCall[])[], root: string): number {
	const disk = new ReplayedDisk(root);
	let count = 0;
	for (const calls of traces) {
		disk.startAnew();
		for (const call of calls) if (disk.make(call)) count += 1;
	}
	return count;
}

function trace(
	{ own, name, failing, steps }: PowerCuts,
	{ writer, folders }: { readonly writer: string; readonly folders: readonly string[] },
): string {
	const log = own.below(`${name}-${writer}.calls`);
	const [home = '', ...spares] = folders;
	const { inject, blocks } = failing;
	const ran = spawnSync(
		'strace',
		[
			...['-o', log, ...TRACE_FLAGS],
			...(inject === undefined ? [] : ['-e', `inject=${inject}`]),
			...['sh', '-c', `ulimit -f ${blocks ?? 'unlimited'}; exec "$@"`, 'sh'],
			...[process.execPath, program, home, writer, String(steps), ...spares],
		],
		{ encoding: 'utf8', env: { ...process.env, UV_THREADPOOL_SIZE: '1' }, timeout: 120_000 },
	);
	if (ran.status !== 0) throw new Error(`${name} ended as ${ran.status}: ${ran.stderr}`);
	return readFileSync(log, 'latin1');
}

type Told = { readonly folders: readonly string[]; readonly typed: number; readonly saved: number };

/** What is wrong with the night as it is taken up after a cut, and once more after a step in it. */
async function takenUp(disk: FaultDisk, { folders, typed, saved }: Told): Promise<string[]> {
	const services: NightServices = { disk, folders, writer: 'writer-9', upMs: 0, wait: setTimeout };
	const opened = openNightFile(services, { id: nightName });
	const found = wrongIn(opened.records(), { typed, saved });
	if (!opened.journal) return saved > 0 ? [...found, 'it cannot be taken up'] : found;
	const steps = stepsOf(opened.records());
	opened.journal.append([stepEntry(typed + 1)], { wallMs: 1, upMs: 1 });
	for (let turn = 0; turn < 50 && !opened.journal.status().isSaved; turn += 1) await settle();
	const again = lookAtNight({ disk: disk.afterPowerCut(() => 0), folders }, { id: nightName });
	const isWhole =
		JSON.stringify(stepsOf(again.records())) === JSON.stringify([...steps, typed + 1]);
	return isWhole ? found : [...found, 'a step made after it was taken up is not as it was'];
}

function wrongIn(
	records: readonly JournalRecord[],
	{ typed, saved }: Omit<Told, 'folders'>,
): string[] {
	const steps = stepsOf(records);
	const isInOrder = steps.every((step, place) => step > (steps[place - 1] ?? 0));
	const isTrue = records.every(
		(record) => JSON.stringify(record.e) === JSON.stringify(stepsOf([record]).map(stepEntry)),
	);
	const missing = Array.from({ length: saved }, (_, place) => place + 1).filter(
		(step) => !steps.includes(step),
	);
	return [
		...(isInOrder && isTrue ? [] : ['the steps are not those that were made']),
		...(missing.length === 0 ? [] : [`${saved} shown as saved, without ${missing.join(', ')}`]),
		...((steps.at(-1) ?? 0) <= typed + 1 ? [] : [`step ${steps.at(-1)} there, ${typed} made`]),
	];
}
