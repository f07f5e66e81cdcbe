// A terminal that stops reading while the whole program draws on it: keys and signals are obeyed as
// ever, and what is newest is drawn once it reads again. Numbers in brackets are those of the list of
// faults that the program must survive. STALL_SECONDS=60 is the full trial, and prints its figures.

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { KEY_APART_MS, lookAtJournal } from '../whole-night/driver.ts';
import { pause } from './pty-screen.ts';
import type { Program } from './whole-program.ts';
import { cleanUpAfterEach, MODES_OFF, PATIENCE_MS, startLive, until } from './whole-program.ts';

cleanUpAfterEach();

const STALL_SECONDS = Number(process.env.STALL_SECONDS ?? 3);
const TIMEOUT_MS = 120_000 + STALL_SECONDS * 1000;

// What the program promises is 100 ms for a key and 1 s for a signal; a machine that others hold busy
// adds to that, and the full trial prints what it took. Memory may grow by 20 MB, and the engine takes
// more until it collects what is no longer used.
const KEY_LIMIT_MS = 2000;
const SIGNAL_LIMIT_MS = 5000;
const MEMORY_LIMIT_MB = 35;

function residentMb(pid: number | undefined): number {
	const status = readFileSync(`/proc/${pid}/status`, 'utf8');
	return Number(/VmRSS:\s+(\d+) kB/.exec(status)?.[1]) / 1024;
}

function tell(what: string, figures: readonly number[], unit: string): void {
	if (process.env.STALL_SECONDS === undefined) return;
	const sorted = figures.toSorted((a, b) => a - b);
	const median = sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
	const most = sorted.at(-1) ?? Number.NaN;
	console.log(`${what}: median ${median.toFixed(1)}, most ${most.toFixed(1)} ${unit}`);
}

// So many views of this size are more than any terminal holds that does not read; without holding
// back they would all be drawn late.
const LARGE = { columns: 200, rows: 60 };
const VIEWS = 14;
const MOST_DRAWN_LATE_BYTES = 55_000;

/** Stops reading, and has the program draw until nothing more goes into the terminal. */
async function stalled({ screen }: Program): Promise<void> {
	screen.stall();
	for (let count = 0; count < VIEWS; count += 1) {
		// The same key counts once within 300 ms.
		screen.send(count % 2 === 0 ? '\t' : '?');
		await pause(KEY_APART_MS / 2);
	}
	// Back to the stage view.
	screen.send('\u001B');
	await pause(KEY_APART_MS);
}

/** Presses for so long, and gives back how long each key took to be in the journal. */
async function pressing({ screen, data }: Program): Promise<number[]> {
	const took: number[] = [];
	const endMs = performance.now() + STALL_SECONDS * 1000;
	while (performance.now() < endMs) {
		await pause(KEY_APART_MS);
		const before = lookAtJournal(data).records.length;
		const beganMs = performance.now();
		screen.send('i');
		await until(() => lookAtJournal(data).records.length > before, 'a key in the journal');
		took.push(performance.now() - beganMs);
	}
	return took;
}

test(
	'[43, 44] keys are kept, memory does not grow, and the newest is drawn at once',
	async () => {
		const program = await startLive(LARGE);
		const { screen, data } = program;
		await program.record('t 0', 'space');
		const before = residentMb(program.pid());
		await stalled(program);
		const drawnTo = screen.rawOutput().length;
		const took = await pressing(program);
		const grownMb = residentMb(program.pid()) - before;
		const incidents = lookAtJournal(data).session.incidents.length;
		expect(incidents).toBe(took.length);
		const beganMs = performance.now();
		screen.unstall();
		await screen.waitFor(`incident ${incidents} noted`, PATIENCE_MS);
		const paintedMs = performance.now() - beganMs;
		const bytes = screen.rawOutput().length - drawnTo;
		tell('key to journal', took, 'ms');
		tell('newest painted after', [paintedMs], 'ms');
		tell('drawn on the way', [bytes], 'bytes');
		tell('memory grown by', [grownMb], 'MB');
		expect(Math.max(...took)).toBeLessThan(KEY_LIMIT_MS);
		expect(grownMb).toBeLessThan(MEMORY_LIMIT_MB);
		// What the terminal held, the frame that was under way and the newest: no more, however long.
		expect(bytes).toBeLessThan(MOST_DRAWN_LATE_BYTES);
		await program.record('space');
	},
	TIMEOUT_MS,
);

test.each(['node', 'launcher', 'single'] as const)(
	'[43] TERM is obeyed, by %s',
	async (by) => {
		const program = await startLive({ by, ...LARGE });
		const before = await program.record('t 0', 'space');
		await stalled(program);
		program.signal('SIGTERM');
		const tookMs = await program.gone();
		tell(`TERM obeyed, by ${by}`, [tookMs], 'ms');
		// At once: the launcher does not wait long for a terminal that has stalled.
		program.screen.unstall();
		expect(tookMs).toBeLessThan(SIGNAL_LIMIT_MS);
		expect(lookAtJournal(program.data)).toEqual(before);
		const { code, areSettingsKept } = await program.afterwards();
		expect({ code, areSettingsKept }).toEqual({ code: 143, areSettingsKept: true });
		// Without the launcher nothing can write the reset once the terminal reads again.
		if (by !== 'node') expect(program.screen.modes()).toEqual(MODES_OFF);
	},
	TIMEOUT_MS,
);

test.each([
	['SIGTERM', 'launcher'],
	['SIGHUP', 'launcher'],
	['SIGTERM', 'single'],
	['SIGHUP', 'single'],
] as const)(
	'[43] %s is obeyed by the one that watches, though nobody ever reads: %s',
	async (signal, by) => {
		const program = await startLive({ by, ...LARGE });
		const { screen } = program;
		await program.record('t 0', 'space');
		await stalled(program);
		const [launcher = 0] = screen.childPids();
		const beganMs = performance.now();
		process.kill(launcher, signal);
		await until(() => !screen.childPids().includes(launcher), 'the end of the launcher');
		const tookMs = performance.now() - beganMs;
		tell(`${signal} obeyed, by the launcher and what it started`, [tookMs], 'ms');
		expect(tookMs).toBeLessThan(SIGNAL_LIMIT_MS);
		expect(program.pid()).toBeUndefined();
		// The settings at least are right, though the screen could not be.
		expect(screen.stty('-a')).toMatch(/ icanon .* echo /s);
		screen.unstall();
		expect((await program.afterwards()).areSettingsKept).toBe(true);
	},
	TIMEOUT_MS,
);
