// Boards driven in a night under way, read back at the other end of a FIFO and of a terminal: every byte, at every
// cue, whatever becomes of the port.

import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { parse } from 'yaml';
import { type MidiOut, midiOut } from '../../src/cli/live/midi-out.ts';
import { openMidiDevice } from '../../src/disk/midi-device.ts';
import type { OpenMidiLine } from '../../src/disk/midi-line.ts';
import { memoryJournal } from '../../src/journal/memory-journal.ts';
import { type Night, openNight } from '../../src/night/night.ts';
import type { Show } from '../../src/showfile/show.ts';
import { sampleHeader } from '../journal/sample-journal.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { pause } from '../terminal/pty-screen.ts';
import { fifoReader, makeFifo, rawTerminal } from './midi-port.ts';
import { heardIn } from './read-midi.ts';
import { turnedClock } from './turned-clock.ts';

const CLUB = join(import.meta.dirname, '../../shows/club.yaml');
const folder = mkdtempSync(join(tmpdir(), 'rackside-port-'));
afterAll(() => rmSync(folder, { recursive: true }));

let count = 0;
function newPath(): string {
	count += 1;
	return join(folder, `port${count}`);
}

/** The club night with a board of an invented kind: each pedal listens to a controller of its own. */
const FIRST_CONTROLLER = 70;
const club: Show = (() => {
	const show = loadShow(CLUB);
	const boards = Object.entries(show.boards).map(([player, pedals], board) => [
		player,
		pedals.map((pedal, at) => ({
			...pedal,
			midi: {
				channel: board + 1,
				on: [{ kind: 'control', controller: FIRST_CONTROLLER + at, value: 127 }],
				off: [{ kind: 'control', controller: FIRST_CONTROLLER + at, value: 0 }],
				scenes: {},
				tempo: null,
			},
		})),
	]);
	return { ...show, boards: Object.fromEntries(boards) };
})();

type Played = {
	readonly night: Night;
	readonly out: MidiOut;
	readonly noted: readonly string[];
	readonly press: (...keys: readonly string[]) => void;
	readonly pass: (ms: number) => void;
};

function played(show: Show, open: OpenMidiLine, port: string): Played {
	const clock = turnedClock();
	const noted: string[] = [];
	const out = midiOut({
		...{ port, open, clock, ports: () => [], show: () => night.session().show },
		note: (code, detail) => noted.push(`${code} ${detail ?? ''}`.trim()),
	});
	const night = openNight({
		show,
		journal: memoryJournal(sampleHeader()),
		clock: {
			wallMs: () => 1_000_000 + clock.nowMs(),
			upMs: clock.nowMs,
			bootId: 'boot',
		},
		plannedZeroMs: 1_000_000,
		dayOffsetMinutes: 0,
		isRehearsal: true,
		effects: out.effects,
	});
	out.start();
	const press = (...keys: readonly string[]) => {
		for (const key of keys) {
			clock.pass(1000);
			night.press(key);
		}
	};
	return { night, out, noted, press, pass: clock.pass };
}

/** What pedals stand at that heard all this, by channel and controller. */
function standing(bytes: readonly number[], before: Readonly<Record<string, boolean>> = {}) {
	const states = { ...before };
	for (const { status, channel, data } of heardIn(bytes)) {
		expect(status).toBe(0xb);
		states[`${channel}:${data[0]}`] = (data[1] ?? 0) >= 64;
	}
	return states;
}

/** The boards of each point of each song as the show file has them, read by the library alone. */
type Told = Readonly<Record<string, unknown>>;
type FileSong = { id: string; board?: Told; cues?: readonly Told[] };
const file = parse(readFileSync(CLUB, 'utf8')) as { songs: FileSong[] };

function boardsInFile(song: string, cue: number): Readonly<Record<string, Told>> {
	const { board = {}, cues = [] } = file.songs.find(({ id }) => id === song) ?? {};
	const isBoard = (id: string): boolean => Object.hasOwn(club.boards, id);
	const named = new Set([board, ...cues].flatMap((one) => Object.keys(one)).filter(isBoard));
	// A song that names a board anywhere says the whole of it from its start.
	return Object.fromEntries(
		[...named].map((player) => {
			const last = [board, ...cues.slice(0, cue)].findLast((one) => Object.hasOwn(one, player));
			return [player, (last?.[player] ?? {}) as Told];
		}),
	);
}

test('the whole club night: at every cue the bytes are the whole state of that cue', () => {
	const path = newPath();
	makeFifo(path);
	const reader = fifoReader(path);
	const { night, press, out } = played(club, () => openMidiDevice(path), path);
	const players = Object.keys(club.boards);
	const pedals = Object.entries(club.boards).flatMap(([player, all]) =>
		all.map(({ id }, at) => ({
			player,
			id,
			key: `${players.indexOf(player) + 1}:${FIRST_CONTROLLER + at}`,
		})),
	);
	let expected: Record<string, boolean> = Object.fromEntries(pedals.map(({ key }) => [key, false]));
	let points = 0;
	press('t', '0');
	for (let presses = 0; presses < 300 && night.session().phase.value !== 'over'; presses += 1) {
		press('space');
		const { song, cue } = night.state() as {
			song: { id: string } | null;
			cue: { index: number } | null;
		};
		const bytes = reader.read();
		if (song === null || cue === null) {
			expect(bytes).toEqual([]);
			continue;
		}
		points += 1;
		const boards = boardsInFile(song.id, cue.index);
		expected = {
			...expected,
			...Object.fromEntries(
				pedals
					.filter(({ player }) => Object.hasOwn(boards, player))
					.map(({ player, id, key }) => {
						const told = boards[player]?.[id];
						return [key, typeof told === 'object' || told === 'on' || told === true];
					}),
			),
		};
		// Nothing of it is left to what was sent before: three bytes for each pedal, in the boards' order.
		expect(bytes).toHaveLength(3 * pedals.length);
		expect(heardIn(bytes).map(({ channel, data }) => `${channel}:${data[0]}`)).toEqual(
			pedals.map(({ key }) => key),
		);
		expect(standing(bytes)).toEqual(expected);
	}
	expect(night.session().phase.value).toBe('over');
	expect(points).toBeGreaterThan(40);
	expect(out.fault()).toBeNull();
	reader.leave();
});

test('a terminal in raw mode gets each byte as it is, line ends too', async () => {
	const path = newPath();
	const reader = await rawTerminal(path);
	const [first, ...others] = Object.entries(club.boards);
	const board = (first?.[1] ?? []).map((pedal) => ({
		...pedal,
		midi: {
			channel: 1,
			on: [],
			// 10 and 13 are what a terminal in its usual mode would change.
			off: [
				{ kind: 'program', program: 10 } as const,
				{ kind: 'control', controller: 13, value: 10 } as const,
			],
			scenes: {},
			tempo: null,
		},
	}));
	const show = { ...club, boards: Object.fromEntries([[first?.[0], board], ...others]) } as Show;
	const { press } = played(show, () => openMidiDevice(path), path);
	press('t', '0', 'space');
	const got: number[] = [];
	for (let waits = 0; waits < 400 && got.length < 1; waits += 1) {
		await pause(5);
		got.push(...reader.read());
	}
	await pause(50);
	got.push(...reader.read());
	reader.leave();
	expect(got.slice(0, 5)).toEqual([0xc0, 10, 0xb0, 13, 10]);
	expect(heardIn(got)).toHaveLength(2 * board.length + others.flatMap(([, all]) => all).length);
});

test('a port that vanishes is told and stops no key; back again, it gets the whole state', () => {
	const path = newPath();
	makeFifo(path);
	const reader = fifoReader(path);
	const { night, out, press, pass, noted } = played(club, () => openMidiDevice(path), path);
	press('t', '0', 'space');
	const whole = reader.read().length;
	reader.leave();
	press('space');
	expect((night.state().cue as { index: number }).index).toBe(1);
	expect(out.fault()).toMatchObject({ port: path, isGone: true });
	expect(noted.filter((one) => one.startsWith('midi-gone'))).toHaveLength(1);
	press('space', 'space');
	pass(5000);
	const back = fifoReader(path);
	pass(1000);
	expect(out.fault()).toBeNull();
	const bytes = back.read();
	expect(bytes).toHaveLength(whole);
	// Harbour's second chorus, as its file has it: drive and boost.
	expect(boardsInFile('harbour', 3)).toMatchObject({ bo: { drive: 'on', boost: 'on' } });
	expect(Object.values(standing(bytes)).filter(Boolean)).toHaveLength(2);
	expect(noted.at(-1)).toBe('midi-back');
	back.leave();
	rmSync(path);
	pass(1000);
	expect(out.fault()).toMatchObject({ isGone: true });
});

test('a port that is not there yet gets the whole state when it comes', () => {
	const path = newPath();
	const { out, press, pass } = played(club, () => openMidiDevice(path), path);
	press('t', '0', 'space');
	expect(out.fault()).toMatchObject({ trouble: 'ENOENT', isGone: false });
	makeFifo(path);
	pass(1000);
	// open(2): a FIFO that nobody reads cannot be opened for writing without waiting.
	expect(out.fault()).toMatchObject({ trouble: 'ENXIO', isGone: false });
	const reader = fifoReader(path);
	pass(1000);
	expect(heardIn(reader.read()).length).toBeGreaterThan(0);
	expect(out.fault()).toBeNull();
	reader.leave();
});

test('a plain file, a folder, a link to nothing: never written', () => {
	const [plain] = [newPath()];
	expect(() => openMidiDevice(folder)).toThrow(expect.objectContaining({ code: 'EISDIR' }));
	expect(() => openMidiDevice(plain)).toThrow(expect.objectContaining({ code: 'ENOENT' }));
	expect(() => openMidiDevice(CLUB)).toThrow(expect.objectContaining({ code: 'EFTYPE' }));
});

test('a port that takes nothing waits with the newest state alone, no message cut', () => {
	const path = newPath();
	makeFifo(path);
	const reader = fifoReader(path);
	let room = 4;
	const sent: number[] = [];
	/** Takes as many bytes as there is room for: a line that is slower than its cues. */
	const open: OpenMidiLine = () => {
		const line = openMidiDevice(path);
		return {
			...line,
			write: (bytes, from) => {
				const taken = Math.min(room, bytes.length - from);
				if (taken === 0) return 0;
				room -= taken;
				sent.push(...bytes.subarray(from, from + taken));
				return line.write(bytes.subarray(0, from + taken), from);
			},
		};
	};
	const { out, press, pass } = played(club, open, path);
	press('t', '0', 'space', 'space', 'space', 'space');
	expect(out.fault()).toMatchObject({ trouble: 'STALLED' });
	room = 1000;
	pass(1000);
	expect(out.fault()).toBeNull();
	const bytes = reader.read();
	expect(bytes).toEqual(sent);
	const pedals = Object.values(club.boards).flat().length;
	// One message of the first state and the one that was half out, then all of the newest.
	expect(heardIn(bytes)).toHaveLength(2 + pedals);
	expect(Object.values(standing(bytes)).filter(Boolean)).toHaveLength(2);
	reader.leave();
});

test('the tempo: four taps a beat apart, and 24 ticks a quarter note without drift', () => {
	const path = newPath();
	makeFifo(path);
	const reader = fifoReader(path);
	const tempo = [{ kind: 'clock' }, { kind: 'tap', controller: 93, value: 127 }] as const;
	const pedals = (club.boards.bo ?? []).slice(0, 2).map(({ midi, ...pedal }, at) => ({
		...pedal,
		midi: { channel: at + 1, on: [], off: [], scenes: {}, tempo: tempo[at] ?? null },
	}));
	const show = { ...club, boards: { ...club.boards, bo: pedals } } as Show;
	const { press, pass } = played(show, () => openMidiDevice(path), path);
	press('t', '0', 'space');
	pass(10_000 - 1);
	const bytes = reader.read();
	const ticks = bytes.filter((byte) => byte === 0xf8).length;
	// MIDI 1.0: 24 clocks a quarter note. Harbour is at 96: 60000 / 96 / 24 ms apart, the first at once.
	expect(ticks).toBe(Math.ceil((10_000 - 1) / (60_000 / 96 / 24)));
	expect(heardIn(bytes).filter(({ data }) => data[0] === 93)).toHaveLength(4);
	press('d');
	reader.read();
	pass(5000);
	expect(reader.read()).toEqual([]);
	reader.leave();
});
