// From a key to the painted screen, and what a long night of keys does to memory, against an Ink app that
// draws the same rows; what stillness costs.

import { closeSync, fdatasyncSync, mkdtempSync, openSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { memoryJournal } from '../../src/journal/memory-journal.ts';
import { openNight } from '../../src/night/night.ts';
import { styledScreen } from '../../src/ui/styled-screen.ts';
import { sampleHeader } from '../journal/sample-journal.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { BenchPty } from './bench-pty.ts';
import { bundleRowsApp, COLUMNS, ROWS } from './minimal-app.ts';
import { median, quantile } from './rounds.ts';

const SHOW = join(import.meta.dirname, '../../shows/club.yaml');
const START_MS = 1_000_000_000_000;
const STEP_MS = 10_000;
const KEYS_A_ROUND = 40;
const LONG_KEYS = Number(process.env.BENCH_KEYS ?? 10_000);
const IDLE_MS = 10_000;
const RESIZES = 300;
const MB = 1_048_576;
/** What is written after each frame. */
const FRAME_END = '\x1b[?2026l';

/** Presses one key after the other, each once the one before is painted. */
type Presser = { readonly pty: BenchPty; readonly press: () => Promise<number> };

/** Forwards and backwards between two cue points by the keys that do it, and what each has shown. */
const STEPS = [
	{ key: ' ', shows: 'Ch2' },
	{ key: '\x7f', shows: 'Ch1' },
	{ key: '\x1b[6~', shows: 'Ch2' },
	{ key: '\x1b[5~', shows: 'Ch1' },
] as const;

/** The same key again counts once within 300 ms; four take turns. */
const PAUSE_MS = 80;
const FAST_MS = 5;

/** Draws what the steps draw, and does nothing else. */
function rowsApp(file: string): Presser {
	const pty = new BenchPty([file]);
	let count = 0;
	return {
		pty,
		press: async () => {
			const { shows } = STEPS[count % STEPS.length] as (typeof STEPS)[number];
			count += 1;
			await wait(PAUSE_MS);
			return pty.until(shows, 'k');
		},
	};
}

/** The two screens that the steps go between, as a terminal of 256 colours is sent them. */
function steppedScreens(): readonly (readonly string[])[] {
	let upMs = 0;
	const night = openNight({
		show: loadShow(SHOW),
		journal: memoryJournal(sampleHeader()),
		clock: { wallMs: () => START_MS + upMs, upMs: () => upMs, bootId: 'boot' },
		plannedZeroMs: START_MS,
		dayOffsetMinutes: 0,
		isRehearsal: false,
	});
	const afterStep = () => {
		upMs += STEP_MS;
		night.press('space');
		return styledScreen(
			night.screen(),
			{ columns: COLUMNS, rows: ROWS },
			{ isAscii: false, colorDepth: 8 },
		);
	};
	return [afterStep(), afterStep(), afterStep()].slice(1);
}

/** Steps, which record an entry and change a dozen rows. */
function liveScreen(data: string): Presser {
	// Through the launcher, as everybody does: it bounds the space for young objects.
	const pty = new BenchPty(['run', SHOW], { RACKSIDE_DATA: data }, 'dist/launch.sh');
	let count = 0;
	return {
		pty,
		press: async () => {
			const { key, shows } = STEPS[count % STEPS.length] as (typeof STEPS)[number];
			count += 1;
			await wait(PAUSE_MS);
			return pty.until(shows, key);
		},
	};
}

/** So many keys as memos, since letters in a text field all count; every fiftieth records one. */
async function writeMemos(pty: BenchPty, keys: number): Promise<void> {
	for (let count = 0; count < keys; count += 50) {
		await pty.until('Memo', 'm');
		for (let letter = 0; letter < 24; letter++) {
			await typed(pty, 'q');
			await typed(pty, 'x');
		}
		await pty.until(FRAME_END, '\r');
		await wait(PAUSE_MS * STEPS.length);
	}
}

/** One key, painted, at a pace that is still beyond any hand. */
async function typed(pty: BenchPty, key: string, shows = key): Promise<void> {
	await pty.until(shows, key);
	await wait(FAST_MS);
}

/** Milliseconds until the disk says that it has all of the night. */
function durableMs(data: string): number {
	const nights = join(data, 'nights');
	const began = process.hrtime.bigint();
	for (const name of readdirSync(nights)) {
		if (!name.endsWith('.journal')) continue;
		const file = openSync(join(nights, name), 'r+');
		fdatasyncSync(file);
		closeSync(file);
	}
	return Number(process.hrtime.bigint() - began) / 1e6;
}

export async function benchKeys(rounds: number): Promise<readonly string[]> {
	const folder = mkdtempSync(join(tmpdir(), 'rackside-bench-'));
	const data = join(folder, 'data');
	const app = rowsApp(await bundleRowsApp(folder, steppedScreens()));
	const live = liveScreen(data);
	try {
		// Counted at once: when the renderer is loaded it goes on from there with a frame of its own.
		const first = live.pty.until('dark').then(() => live.pty.bytes);
		const [fullFrame] = await Promise.all([first, app.pty.until('Ch1')]);
		await live.pty.until('Ch1', ' ');
		await wait(PAUSE_MS * STEPS.length);
		await live.pty.until('V2', ' ');
		await wait(PAUSE_MS * STEPS.length);
		const taken = { rows: [] as number[], painted: [] as number[], durable: [] as number[] };
		for (let round = 0; round < rounds; round++) {
			for (let key = 0; key < KEYS_A_ROUND; key++) {
				taken.rows.push(await app.press());
				const painted = await live.press();
				taken.painted.push(painted);
				taken.durable.push(painted + durableMs(data));
			}
		}
		const byTick = await bytesOfTicks(live.pty);
		const byLetter = await bytesOfALetter(live.pty);
		const idle = await idleShare(live.pty);
		const storm = await resizeStorm(live.pty);
		const rows = [
			...latencyRows('key to painted', taken.rows, taken.painted, [1.6, 2]),
			...latencyRows('key to durable to painted', taken.rows, taken.durable, [1.8, 3]),
			row('bytes for a letter typed', `${byLetter}`, share(byLetter, fullFrame, 'target <= 5 %')),
			row('bytes for a second passed', `${byTick}`, share(byTick, fullFrame, '')),
			row('processor, idle with clocks running', `${(idle * 100).toFixed(2)} %`, '(target <= 1 %)'),
			row(
				`${RESIZES} resizes`,
				`${storm.ms.toFixed(0)} ms`,
				`until the screen is still, ${Math.round(storm.bytes / 1024)} KB written`,
			),
		];
		const pressAll = async () => {
			for (let key = 0; key < LONG_KEYS; key++) await typed(app.pty, 'k', FRAME_END);
		};
		await Promise.all([pressAll(), writeMemos(live.pty, LONG_KEYS)]);
		const [small, large] = [app.pty.residentBytes(), live.pty.residentBytes()];
		return [
			...rows,
			row(
				`memory after ${LONG_KEYS} keys`,
				`${Math.round(large / MB)} MB`,
				`${(large / small).toFixed(2)} x rows app, ${Math.round(small / MB)} MB  (target <= 1.3)`,
			),
		];
	} finally {
		await Promise.all([app.pty.kill(), live.pty.kill()]);
		rmSync(folder, { recursive: true, force: true });
	}
}

function row(name: string, figure: string, words: string): string {
	return `${name.padEnd(44)} ${figure.padStart(9)}  ${words}`.trimEnd();
}

function share(bytes: number, fullFrame: number, target: string): string {
	const percent = ((bytes / fullFrame) * 100).toFixed(1);
	return `${percent} % of a first frame of ${fullFrame}${target === '' ? '' : `  (${target})`}`;
}

function latencyRows(
	name: string,
	rows: readonly number[],
	ours: readonly number[],
	[most, worst]: readonly [number, number],
): readonly string[] {
	const figures = [
		['median', median(ours), median(rows), most],
		['p99', quantile(ours, 0.99), quantile(rows, 0.99), worst],
	] as const;
	return figures.map(([which, one, other, target]) =>
		row(
			`${name}, ${which}`,
			`${one.toFixed(2)} ms`,
			`${(one / other).toFixed(2)} x rows app, ${other.toFixed(2)} ms  (target <= ${target})`,
		),
	);
}

async function bytesOfTicks(pty: BenchPty): Promise<number> {
	const before = pty.bytes;
	await wait(5000);
	return Math.round((pty.bytes - before) / 5);
}

/** One more letter in an open text field, the frames of the ticks not counted. */
async function bytesOfALetter(pty: BenchPty): Promise<number> {
	await pty.until('Memo', 'm');
	const taken: number[] = [];
	for (const letter of 'qxqxqxqxq') {
		const before = pty.bytes;
		await pty.until(letter, letter);
		await wait(30);
		taken.push(pty.bytes - before);
	}
	pty.write('\x1b');
	await wait(300);
	return Math.round(median(taken));
}

async function idleShare(pty: BenchPty): Promise<number> {
	const before = pty.processorMs();
	await wait(IDLE_MS);
	return (pty.processorMs() - before) / IDLE_MS;
}

/** Sizes that follow each other faster than anybody can drag; then what it took to be still again. */
async function resizeStorm(
	pty: BenchPty,
): Promise<{ readonly ms: number; readonly bytes: number }> {
	const before = pty.bytes;
	const began = process.hrtime.bigint();
	for (let count = 0; count < RESIZES; count++) {
		pty.resize(60 + (count % 80), 20 + (count % 30));
		if (count % 10 === 9) await wait(1);
	}
	pty.resize(COLUMNS, ROWS);
	let last = pty.bytes;
	let stillMs = Number(process.hrtime.bigint() - began) / 1e6;
	// A clock that ticks writes less than a line; a screen drawn anew more.
	for (let waits = 0; waits < 20; waits++) {
		await wait(50);
		if (pty.bytes - last > COLUMNS * ROWS * 0.2)
			stillMs = Number(process.hrtime.bigint() - began) / 1e6;
		last = pty.bytes;
	}
	return { ms: stillMs, bytes: pty.bytes - before };
}
