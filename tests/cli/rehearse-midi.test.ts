// What boards are sent through a rehearsal: at each place in the songs the whole state of that place, however it was
// reached, read back from the bytes alone.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';
import { heardIn, tapeLines } from '../rig/read-midi.ts';
import { runCommand } from './run-command.ts';

const SHOW = fileURLToPath(new URL('../rig/midi.yaml', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'rackside-midi-'));
afterAll(() => rmSync(folder, { recursive: true }));

let count = 0;

async function tape(script: string): Promise<string> {
	count += 1;
	writeFileSync(join(folder, `${count}.txt`), script);
	const { code, err } = await runCommand(
		{ cwd: folder, data: join(folder, 'data') },
		...['rehearse', SHOW, '--script', `${count}.txt`, '--quiet', '--midi', `${count}.midi`],
	);
	expect({ code, err }).toEqual({ code: 0, err: '' });
	return readFileSync(join(folder, `${count}.midi`), 'utf8');
}

test('a night with a step back, an undo and a crash: whole boards in their order, each message with its status', async () => {
	const text = await tape(`-01:00 !ready
00:00 space
00:30 space
00:50 space
01:00 backspace
01:10 u
04:00 d
04:20 space
05:00 !kill
`);
	expect(text).toBe(`00:00:00 B0 40 00 B1 01 00 B0 5D 7F B0 5D 7F
00:00:01 B0 5D 7F B0 5D 7F
00:00:30 B0 40 7F B1 00 02 B1 20 2C C1 0B
00:00:50 B0 40 00 C1 00
00:01:00 B0 40 7F B1 00 02 B1 20 2C C1 0B
00:01:10 B0 40 00 C1 00
00:04:20 B0 40 7F B1 01 00
`);
});

/** What a board as a receiver stands at, from all that it heard. */
function standing(text: string) {
	const board = { drive: 'unknown', delay: 'unknown' };
	let bank = 0;
	for (const { bytes } of tapeLines(text)) {
		for (const { status, channel, data } of heardIn(bytes)) {
			const [first = 0, second = 0] = data;
			if (channel === 1 && first === 0x40) board.drive = second >= 64 ? 'on' : 'off';
			if (channel === 2 && status === 0xb && first === 0) bank = second << 7;
			if (channel === 2 && status === 0xb && first === 32) bank |= second;
			if (channel === 2 && status === 0xb && first === 1) board.delay = 'off';
			if (channel === 2 && status === 0xc)
				board.delay = first === 11 && bank === 300 ? 'wide' : 'dry';
		}
	}
	return board;
}

const PLACES = [
	{ drive: 'off', delay: 'off' },
	{ drive: 'on', delay: 'wide' },
	{ drive: 'off', delay: 'dry' },
];

test('after any walk through a song boards stand as its place asks', async () => {
	await fc.assert(
		fc.asyncProperty(
			fc.array(fc.constantFrom('space', 'backspace'), { maxLength: 12 }),
			async (keys) => {
				let cue = 0;
				let isOn = true;
				const lines = keys.flatMap((key, at) => {
					if (!isOn) return [];
					if (key === 'space') cue += 1;
					else cue = Math.max(0, cue - 1);
					isOn = cue < PLACES.length;
					const second = 5 + at * 5;
					return isOn ? [`00:${String(second).padStart(2, '0')} ${key}`] : [];
				});
				if (!isOn) cue = PLACES.length - 1;
				const text = await tape(['-01:00 !ready', '00:00 space', ...lines, ''].join('\n'));
				expect(standing(text)).toEqual(PLACES[cue]);
			},
		),
		{ numRuns: 25 },
	);
});

test('a stuck pedal is sent nothing, and a foot is not worked against', async () => {
	const stuck = await tape('-01:00 !ready\n00:00 space\n00:10 f 0 1\n00:30 space\n');
	expect(tapeLines(stuck).at(-1)?.bytes).toEqual([0xb1, 0, 2, 0xb1, 32, 44, 0xc1, 11]);
	const foot = await tape('-01:00 !ready\n00:00 space\n00:10 o 1\n');
	expect(tapeLines(foot).map(({ at }) => at)).toEqual(['00:00:00', '00:00:01']);
});

test('a file that is there is kept', async () => {
	writeFileSync(join(folder, 'mine.midi'), 'mine');
	writeFileSync(join(folder, 'mine.txt'), '00:00 space\n');
	const asked = ['rehearse', SHOW, '--script', 'mine.txt', '--quiet', '--midi', 'mine.midi'];
	const { code, err } = await runCommand({ cwd: folder, data: join(folder, 'data') }, ...asked);
	expect(code).toBe(2);
	expect(err).toMatch(/is there already.*--force/);
	expect(readFileSync(join(folder, 'mine.midi'), 'utf8')).toBe('mine');
});

test('without a script there is nothing to write: refused in a sentence, and said how to send live', async () => {
	const place = { cwd: folder, data: join(folder, 'data') };
	const { code, out, err } = await runCommand(place, 'rehearse', SHOW, '--midi', 'none.midi');
	expect({ code, out }).toEqual({ code: 2, out: '' });
	expect(err.replace(/\s+/g, ' ')).toContain(
		'rehearse --midi writes what a script would send, and there is no --script. Add --script FILE.',
	);
});
