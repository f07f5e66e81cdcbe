// From a key to the last byte of the whole board at the other end of a raw device: a FIFO, and a terminal in raw mode.

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setImmediate as turn, setTimeout as wait } from 'node:timers/promises';
import { fifoReader, makeFifo, type Reader, rawTerminal } from '../rig/midi-port.ts';
import { BenchPty } from './bench-pty.ts';
import { median, quantile } from './rounds.ts';

const SHOW = join(import.meta.dirname, '../rig/midi.yaml');
const TARGET_MS = 5;
const KEYS_A_ROUND = 20;
const PATIENCE_MS = 5000;

/** Between the two cues of its first song, with how many bytes each board has. */
const STEPS = [
	{ key: ' ', bytes: 5 },
	{ key: '\x7f', bytes: 11 },
	{ key: '\x1b[6~', bytes: 5 },
	{ key: '\x1b[5~', bytes: 11 },
] as const;

/** The same key again counts once within 300 ms; four take turns. */
const PAUSE_MS = 90;

export async function benchMidi(rounds: number): Promise<readonly string[]> {
	const folder = mkdtempSync(join(tmpdir(), 'rackside-bench-'));
	try {
		const fifo = join(folder, 'fifo');
		makeFifo(fifo);
		const terminal = join(folder, 'terminal');
		return [
			...(await rows('a FIFO', { path: fifo, reader: fifoReader(fifo), folder, rounds })),
			...(await rows('a terminal', {
				path: terminal,
				reader: await rawTerminal(terminal),
				folder,
				rounds,
			})),
		];
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
}

type Measured = {
	readonly path: string;
	readonly reader: Reader;
	readonly folder: string;
	readonly rounds: number;
};

async function rows(
	name: string,
	{ path, reader, folder, rounds }: Measured,
): Promise<readonly string[]> {
	const data = join(folder, `data of ${name}`);
	const pty = new BenchPty(
		['run', SHOW, '--midi', path],
		{ RACKSIDE_DATA: data },
		'dist/launch.sh',
	);
	try {
		await pty.until('Ch1', ' ');
		await wait(2500);
		await pty.until('V2', ' ');
		await wait(4 * PAUSE_MS);
		reader.read();
		const taken: number[] = [];
		for (let key = 0; key < rounds * KEYS_A_ROUND; key++) {
			const { key: pressed, bytes } = STEPS[key % STEPS.length] as (typeof STEPS)[number];
			await wait(PAUSE_MS);
			const began = process.hrtime.bigint();
			pty.write(pressed);
			await arrived(reader, bytes);
			taken.push(Number(process.hrtime.bigint() - began) / 1e6);
		}
		const figure = (ms: number) => `${ms.toFixed(2)} ms`.padStart(9);
		return [
			`${`key to last byte on ${name}, median`.padEnd(44)} ${figure(median(taken))}  (target <= ${TARGET_MS} ms)`,
			`${`key to last byte on ${name}, p99`.padEnd(44)} ${figure(quantile(taken, 0.99))}`,
		];
	} finally {
		await pty.kill();
		reader.leave();
	}
}

async function arrived(reader: Reader, count: number): Promise<void> {
	const began = process.hrtime.bigint();
	for (let got = 0; ; ) {
		got += reader.read().length;
		if (got === count) return;
		if (got > count) throw new Error(`${got} bytes, not ${count}`);
		if (Number(process.hrtime.bigint() - began) / 1e6 > PATIENCE_MS) throw new Error('no bytes');
		await turn();
	}
}
