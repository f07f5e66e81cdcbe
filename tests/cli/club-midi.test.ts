// The club show driven over MIDI for a whole night: read back from the bytes alone, what the pedals of a receiver stand
// at is the whole board of the place, at every step; a step undone, gone back to, a song begun again after a crash.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { parse } from 'yaml';
import { markText } from '../../src/base/show-clock.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import { extend, openTimeline, sessionOf } from '../../src/session/timeline.ts';
import { playedNight, ZERO_MS } from '../report/script-night.ts';
import { heardIn, tapeLines } from '../rig/read-midi.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { runCommand } from './run-command.ts';

const file = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'rackside-club-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** In the order of the file; each has a channel of its own. */
const PEDALS = ['drive', 'boost', 'delay', 'fuzz', 'echo'];
/** General purpose controller 5 (MIDI 1.0, table of controllers). */
const SWITCH = 80;

const gear = readFileSync(file('shows/club-gear.yaml'), 'utf8').replace(
	/\{id: (drive|boost|delay|fuzz|echo), name: (\w+)\}/g,
	(_, id: string, name: string) =>
		`{id: ${id}, name: ${name}, midi: {channel: ${PEDALS.indexOf(id) + 1}, on: [{cc: ${SWITCH}, value: 127}], off: [{cc: ${SWITCH}, value: 0}]}}`,
);
writeFileSync(join(folder, 'club-gear.yaml'), gear);
writeFileSync(join(folder, 'club.yaml'), readFileSync(file('shows/club.yaml'), 'utf8'));

/** What was written, and what is believed after each step: the last one of each second. */
async function played(script: string) {
	writeFileSync(join(folder, 'night.txt'), script);
	const { code, err } = await runCommand(
		{ cwd: folder, data: join(folder, 'data') },
		...['rehearse', 'club.yaml', '--script', 'night.txt', '--quiet'],
		...['--midi', 'night.midi', '--force'],
	);
	expect({ code, err }).toEqual({ code: 0, err: '' });
	const show = loadShow(join(folder, 'club.yaml'));
	const states = new Map<string, Session['boards']>();
	const opening = openTimeline(openSession(show));
	playedNight(show, script).records.reduce((before, record) => {
		const after = extend(before, record);
		const at = record.e[0]?.at ?? 0;
		if (at >= ZERO_MS) states.set(markText(at - ZERO_MS), sessionOf(after).boards);
		return after;
	}, opening);
	return { states, tape: tapeLines(readFileSync(join(folder, 'night.midi'), 'utf8')) };
}

type Told = Awaited<ReturnType<typeof played>>;

/** The pedals of a receiver after all that was sent until then, by the bytes alone. */
function standing(tape: Told['tape'], until: string): Readonly<Record<string, boolean>> {
	const board: Record<string, boolean> = {};
	for (const { bytes } of tape.filter(({ at }) => at <= until)) {
		for (const { status, channel, data } of heardIn(bytes)) {
			expect({ status, controller: data[0] }).toEqual({ status: 0xb, controller: SWITCH });
			board[PEDALS[channel - 1] ?? ''] = (data[1] ?? 0) >= 64;
		}
	}
	return board;
}

const believed = (boards: Session['boards']): Readonly<Record<string, boolean>> =>
	Object.fromEntries(
		Object.values(boards).flatMap(({ context }) =>
			Object.entries(context.pedals).map(([id, { on }]) => [id, on]),
		),
	);

function holds({ states, tape }: Told): void {
	for (const { at, bytes } of tape) {
		// Every byte: five messages of three bytes, in the order of the boards, once for each place in that second.
		expect(bytes.length % 15, at).toBe(0);
		expect(heardIn(bytes.slice(0, 15)).map(({ channel }) => channel)).toEqual([1, 2, 3, 4, 5]);
	}
	expect(states.size).toBeGreaterThan(10);
	for (const [at, boards] of states) expect(standing(tape, at), at).toEqual(believed(boards));
}

test('the night of the rehearsal: the whole board at each of its steps', async () => {
	const told = await played(readFileSync(file('tests/rehearsals/club-night.txt'), 'utf8'));
	holds(told);
	expect(told.tape.length).toBeGreaterThan(40);
	// By the file itself: where a cue names Bo's board, what it leaves out is off.
	const { songs } = parse(readFileSync(file('shows/club.yaml'), 'utf8'));
	const lantern = songs.find(({ id }: { id: string }) => id === 'lantern');
	const cues = lantern.cues as readonly { at: string; bo?: Record<string, unknown> }[];
	// 04:30 it begins; at 05:20, 06:40 and 08:00 its cues are reached.
	for (const [index, at] of ['00:05:20', '00:06:40', '00:08:00'].entries()) {
		const asked = cues[index]?.bo ?? {};
		const stands = standing(told.tape, at);
		for (const pedal of ['drive', 'boost', 'delay']) {
			const isOn = pedal in asked && asked[pedal] !== 'off' && asked[pedal] !== false;
			expect([at, pedal, stands[pedal]]).toEqual([at, pedal, isOn]);
		}
	}
});

test('a step undone and redone, gone back to, jumped over, taken up after a crash: the place has its board', async () => {
	holds(
		await played(`-01:00 t 0
00:00 space
00:50 space
01:00 u
01:10 y
01:40 space
01:50 backspace
02:00 backspace
02:10 space
02:30 d
04:30 space
05:20 space
05:30 !kill
06:40 space
06:50 j "saltmarsh" enter
08:00 d
08:30 space
09:00 space
09:10 u u
`),
	);
});
