// Whole commands and a night of keys as shows grow, up to more than anybody takes on tour: as a user waits
// for them, from the start of the process to its end.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { loadShow } from '../scenarios/load-show.ts';
import { pressedKeys, type TimedKey } from './grown-keys.ts';
import { grownShow } from './grown-show.ts';
import { median } from './rounds.ts';

const SIZES = [
	{ songs: 40, instruments: 30, players: 5, targetSeconds: 1 },
	{ songs: 60, instruments: 40, players: 6, targetSeconds: 2 },
	{ songs: 200, instruments: 60, players: 8, targetSeconds: 10 },
] as const;
const OPEN = [
	{ words: 'all named', open: 0 },
	{ words: 'a third open', open: 1 / 3 },
] as const;
/** Shows of each size and kind. */
const SHOWS = Number(process.env.BENCH_GROWN ?? 2);
const TARGET_MB = 300;
const LIMIT_SECONDS = 60;
const TARGET_KEY_MS = 50;
/** Has a process write, as its last, what it took into its fourth file. */
const TELL_USAGE = `data:text/javascript,${encodeURIComponent(
	"import { writeSync } from 'node:fs'; process.on('exit', () => writeSync(3, JSON.stringify(process.resourceUsage())));",
)}`;

type Run = {
	readonly seconds: number;
	/** What it took; null when it was ended for taking too long. */
	readonly usage: { readonly megabytes: number; readonly processorSeconds: number } | null;
};

export function* benchGrown(): Generator<string> {
	const folder = mkdtempSync(join(tmpdir(), 'rackside-bench-'));
	try {
		for (const { targetSeconds, ...size } of SIZES) {
			for (const { words, open } of OPEN) {
				const name = `${size.songs} x ${size.instruments} x ${size.players}, ${words}`;
				const files = Array.from({ length: SHOWS }, (_, seed) => {
					const file = join(folder, `${size.songs}-${seed}-${open > 0 ? 'open' : 'named'}.yaml`);
					writeFileSync(file, grownShow({ ...size, seed, open }));
					return file;
				});
				for (const command of ['check', 'plan'])
					yield commandRow(`${command}, ${name}`, {
						runs: files.map((file) => runOf(command, file)),
						targetSeconds,
					});
				if (size.songs === 60) yield keyRow(`keys, ${name}`, files[0]!);
			}
		}
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
}

function runOf(command: string, file: string): Run {
	const began = process.hrtime.bigint();
	const { status, signal, stderr, output } = spawnSync(
		process.execPath,
		['--import', TELL_USAGE, 'dist/rackside.js', command, file],
		{
			encoding: 'utf8',
			stdio: ['ignore', 'pipe', 'pipe', 'pipe'],
			maxBuffer: 1 << 28,
			timeout: LIMIT_SECONDS * 1000,
			killSignal: 'SIGKILL',
		},
	);
	const seconds = Number(process.hrtime.bigint() - began) / 1e9;
	if (signal === 'SIGKILL' && seconds >= LIMIT_SECONDS) return { seconds, usage: null };
	if (status !== 0 && status !== 1)
		throw new Error(`${command} ended with ${status ?? signal}: ${stderr}`);
	const { maxRSS, userCPUTime, systemCPUTime } = JSON.parse(output[3] ?? '');
	const processorSeconds = (userCPUTime + systemCPUTime) / 1e6;
	return { seconds, usage: { megabytes: maxRSS / 1024, processorSeconds } };
}

type Runs = { readonly runs: readonly Run[]; readonly targetSeconds: number };

function commandRow(name: string, { runs, targetSeconds }: Runs): string {
	const seconds = runs.map((run) => run.seconds);
	const used = runs.flatMap(({ usage }) => usage ?? []);
	const most = (of: (one: (typeof used)[number]) => number): number => Math.max(...used.map(of));
	const ended = runs.length - used.length;
	const figures = [
		`${median(seconds).toFixed(2)} s median, ${Math.max(...seconds).toFixed(2)} worst`,
		...(used.length > 0
			? [
					`of processor ${most(({ processorSeconds }) => processorSeconds).toFixed(2)} s at the most`,
					`${most(({ megabytes }) => megabytes).toFixed(0)} MB`,
				]
			: []),
		...(ended > 0 ? [`${ended} of ${runs.length} ended after ${LIMIT_SECONDS} s`] : []),
	];
	return `${name}: ${figures.join(', ')}  (targets <= ${targetSeconds} s, <= ${TARGET_MB} MB)`;
}

function keyRow(name: string, file: string): string {
	const { taken, songs, isCutShort } = pressedKeys(loadShow(file), LIMIT_SECONDS);
	const ms = taken.map((one) => one.ms);
	const worst = (all: readonly TimedKey[]): string =>
		Math.max(...all.map(({ processorMs }) => processorMs)).toFixed(0);
	const each = [...Map.groupBy(taken, ({ of }) => of)].map(([key, all]) => `${key} ${worst(all)}`);
	const late = taken.filter(({ processorMs }) => processorMs > TARGET_KEY_MS).length;
	const cut = isCutShort ? ` (ended after ${LIMIT_SECONDS} s)` : '';
	return [
		`${name}: ${ms.length} keys in ${songs} songs${cut}`,
		`${median(ms).toFixed(1)} ms median, ${Math.max(...ms).toFixed(0)} worst`,
		`of processor ${worst(taken)} worst, ${late} over (${each.join(', ')})  (target <= ${TARGET_KEY_MS} ms)`,
	].join(', ');
}
