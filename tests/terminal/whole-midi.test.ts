// Boards driven by the whole program in a terminal: bytes in a FIFO, a port that is gone said on the screen, and after
// a kill the question whether to send.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fifoReader, makeFifo, type Reader } from '../rig/midi-port.ts';
import { heardIn } from '../rig/read-midi.ts';
import { pause } from './pty-screen.ts';
import {
	cleanUpAfterEach,
	PATIENCE_MS,
	scratch,
	startLive,
	startProgram,
	until,
} from './whole-program.ts';

cleanUpAfterEach();

const SHOW = 'tests/rig/midi.yaml';

/** The whole board at the first cue: the drive on, the delay's scene in bank 300, which is 2 and 44. */
const CHORUS = [0xb0, 0x40, 127, 0xb1, 0, 2, 0xb1, 32, 44, 0xc1, 11];

async function heard(reader: Reader, least: number): Promise<number[]> {
	const bytes: number[] = [];
	await until(() => {
		bytes.push(...reader.read());
		return bytes.length >= least;
	}, `${least} bytes`);
	return bytes;
}

test('undone, redone and gone back to: the whole board of the place each time, live as in a rehearsal', async () => {
	const path = join(scratch('midi'), 'pedals');
	makeFifo(path);
	const reader = fifoReader(path);
	const live = await startLive({ data: scratch(), words: `run ${SHOW} --midi ${path}` });
	await live.record('t 0', 'space');
	await heard(reader, 9);
	// The taps of the tempo are over.
	await pause(2000);
	reader.read();
	/** The board at the song's start: both off. */
	const START = [0xb0, 0x40, 0, 0xb1, 1, 0];
	for (const [key, bytes] of [
		['space', CHORUS],
		['u', START],
		['y', CHORUS],
		['backspace', START],
		['space', CHORUS],
	] as const) {
		await live.record(key);
		expect([key, await heard(reader, bytes.length)]).toEqual([key, bytes]);
		// Nothing more follows.
		await pause(300);
		expect(reader.read()).toEqual([]);
	}
	live.signal('SIGKILL');
	await live.gone();
	reader.leave();
});

test('bytes at each cue; after kill -9 nothing until the question is answered', async () => {
	const path = join(scratch('midi'), 'pedals');
	makeFifo(path);
	const reader = fifoReader(path);
	const data = scratch();
	const words = `run ${SHOW} --midi ${path}`;
	const first = await startLive({ data, words });
	expect(first.screen.text()).not.toContain('Send boards');
	await first.record('t 0', 'space');
	await heard(reader, 9);
	// The taps of the tempo are over.
	await pause(2000);
	reader.read();
	await first.record('space');
	expect(await heard(reader, CHORUS.length)).toEqual(CHORUS);
	first.signal('SIGKILL');
	await first.gone();
	const second = startProgram({ data, words });
	await second.screen.waitFor('Send boards as they should be now?', PATIENCE_MS);
	await pause(1500);
	expect(reader.read()).toEqual([]);
	await second.screen.press('enter');
	const again = await heard(reader, CHORUS.length + 3);
	expect(again.slice(0, CHORUS.length)).toEqual(CHORUS);
	await second.screen.waitFor((rows) => !rows.join('\n').includes('Send boards'), PATIENCE_MS);
	second.signal('SIGKILL');
	await second.gone();
	const third = startProgram({ data, words });
	await third.screen.waitFor('Send boards', PATIENCE_MS);
	await pause(300);
	reader.read();
	await third.screen.press('esc');
	await third.record('space');
	const next = await heard(reader, 5);
	expect(heardIn(next.slice(0, 5))).toMatchObject([
		{ channel: 1, data: [0x40, 0] },
		{ status: 0xc, channel: 2, data: [0] },
	]);
	third.signal('SIGKILL');
	await third.gone();
	const without = await startLive({ data, words: `run ${SHOW}` });
	await pause(300);
	expect(without.screen.text()).not.toContain('Send boards');
	reader.leave();
});

test('a port that is gone is said and noted, and stops no key', async () => {
	const path = join(scratch('midi'), 'pedals');
	makeFifo(path);
	const reader = fifoReader(path);
	const data = scratch();
	const program = await startLive({ data, words: `run ${SHOW} --midi ${path}`, columns: 120 });
	await program.record('t 0', 'space');
	await heard(reader, 9);
	reader.leave();
	await program.screen.waitFor('is gone', PATIENCE_MS);
	await program.record('space');
	const back = fifoReader(path);
	await program.screen.waitFor((rows) => !rows.join('\n').includes('is gone'), PATIENCE_MS);
	const bytes = await heard(back, CHORUS.length);
	expect(bytes.slice(0, CHORUS.length)).toEqual(CHORUS);
	const troubles = readFileSync(join(data, 'troubles.log'), 'utf8');
	expect(troubles).toMatch(/midi-gone (ENXIO|EPIPE)\n.*midi-back\n/);
	back.leave();
});
