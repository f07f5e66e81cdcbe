// What a show file says of the rig, read: units, supplies, messages.

import { expect, test } from 'vitest';
import { parseCapacity, parseMetres, parseOhms } from '../../src/showfile/electric-measure.ts';
import { keptShow, showRecord } from '../../src/showfile/show-record.ts';
import { linesFrom, showFrom, smallShow } from './show-files.ts';

const RIG = `
rigs:
  ash:
    - {id: lead, kind: cord, length: 6 m, pf-per-m: 100}
    - {id: board, kind: board}
    - {id: head, kind: amp, watts: 30, tap: 4, taps: [4, 8, 16], tube: true, input: 1 M}
    - {id: cab1, kind: cab, ohms: 8, watts: 60}
    - {id: cab2, kind: cab, ohms: 8, watts: 60, wired: parallel, chance: 2, test: 20s, swap: 30s, spare: cab 3}
boards:
  ash:
    - {id: drive, name: Drive, input: 500 k, power: {supply: S1, output: a, ma: 35, volts: 9, centre: negative},
       midi: {channel: 1, on: [{cc: 64, value: 127}], off: [{cc: 64, value: 0}]}}
    - {id: delay, name: Delay, power: {battery: 500 mAh, ma: 12, hours-used: 10},
       midi: {channel: 2, tempo: clock, scenes: {wide: [{bank: 300, program: 11}], dry: [{program: 0}]}}}
supplies: [{id: S1, outputs: [{id: a, volts: 9, ma: 100, centre: negative}]}]
`;

// Read anew by each test, so that each is known to reach what reads.
const rigged = () =>
	showFrom(
		smallShow({ more: RIG }).replace(
			'{id: P1}',
			'{id: P1, channel: G1, battery: {hours: 6, used: 2.5}}',
		),
	);

test('the way of the sound, with its units', () => {
	const show = rigged();
	expect(show.rigs?.ash).toEqual([
		{ id: 'lead', name: 'lead', kind: 'cord', metres: 6, picofaradsPerMetre: 100 },
		{ id: 'board', name: 'board', kind: 'board' },
		{
			...{ id: 'head', name: 'head', kind: 'amp', watts: 30, tap: 4, taps: [4, 8, 16] },
			...{ isTube: true, inputOhms: 1_000_000 },
		},
		{ id: 'cab1', name: 'cab1', kind: 'cab', ohms: 8, watts: 60 },
		{
			...{ id: 'cab2', name: 'cab2', kind: 'cab', ohms: 8, watts: 60, wired: 'parallel' },
			...{ chance: 2, testSeconds: 20, swapSeconds: 30, spare: 'cab 3' },
		},
	]);
	expect(show.packs).toEqual([
		{ id: 'P1', name: null, channel: 'G1', battery: { hours: 6, used: 2.5 } },
		{ id: 'P2', name: null, channel: null },
	]);
});

test('what pedals run on and are sent, the bank before its program', () => {
	const [drive, delay] = rigged().boards.ash ?? [];
	expect(drive?.power).toMatchObject({ supply: 'S1', output: 'a', milliamps: 35, battery: null });
	expect(delay?.power?.battery).toEqual({ milliampHours: 500, hoursUsed: 10 });
	expect(delay?.midi).toEqual({
		channel: 2,
		on: [],
		off: [],
		scenes: {
			wide: [
				{ kind: 'bank', bank: 300 },
				{ kind: 'program', program: 11 },
			],
			dry: [{ kind: 'program', program: 0 }],
		},
		tempo: { kind: 'clock' },
	});
});

/** The ways of power and of messages that the rig above has none of. */
const MORE = `  - {id: X, kind: electric-6, tuning: E standard, output: {ohms: 8 k}, power: {battery: 550 mAh, hours-used: 3, ma: 1}}
  - {id: Y, kind: acoustic-6, tuning: E standard, output: {pf: 1200}, power: {supply: S2}}
packs: [{id: P1}, {id: P2, battery: {hours: 8}}]
rigs:
  bo: [{id: di, kind: direct-box, power: {supply: S1}, switched: tech}]
boards:
  ash:
    - {id: drive, input: 1 M, output: 10 k, switched: midi, controls: [gain, tone], scribbles: {tape: "blue\\e[1m", marks: [12, {at: noon}, ""], none: },
       midi: {channel: 16, on: {cc: 64, value: 0}, off: {note: 60}, tempo: {cc: 93}}}
    - {id: delay, power: {supply: S2, output: b, centre: positive}, midi: {channel: 1, on: {note: 61, velocity: 5}, tempo: {cc: 93, value: 1}}}
supplies:
  - {id: S1, name: Brick, outputs: [{id: a}]}
  - {id: S2, outputs: [{id: a, ma: 100}, {id: b, volts: 12, centre: positive}]}
`;
const SOME_PACKS = 'packs:\n  - {id: P1}\n  - {id: P2}\n';

test('what instruments give and run on', () => {
	const show = showFrom(smallShow({ more: MORE }).replace(SOME_PACKS, ''));
	const [, , , x, y] = show.instruments;
	const unsaid = { supply: null, output: null, milliamps: null, volts: null, centre: null };
	expect(x).toMatchObject({
		output: { ohms: 8000 },
		power: { ...unsaid, milliamps: 1, battery: { milliampHours: 550, hoursUsed: 3 } },
	});
	expect(y?.output).toEqual({ picofarads: 1200 });
	expect(y?.power).toEqual({ ...unsaid, supply: 'S2', battery: null });
	expect(show.instruments[0]).not.toHaveProperty('output');
	expect(show.instruments[0]).not.toHaveProperty('power');
	expect(show.packs[1]?.battery).toEqual({ hours: 8, used: 0 });
	expect(show.rigs?.bo).toEqual([
		{
			...{ id: 'di', name: 'di', kind: 'direct-box', switched: 'tech' },
			power: { ...unsaid, supply: 'S1', battery: null },
		},
	]);
	expect(show.supplies).toEqual([
		{
			...{ id: 'S1', name: 'Brick' },
			outputs: [{ id: 'a', volts: null, milliamps: null, centre: null }],
		},
		{
			...{ id: 'S2', name: 'S2' },
			outputs: [
				{ id: 'a', volts: null, milliamps: 100, centre: null },
				{ id: 'b', volts: 12, milliamps: null, centre: 'positive' },
			],
		},
	]);
});

test('notes, controllers and taps, at full strength where none is said', () => {
	const show = showFrom(smallShow({ more: MORE }).replace(SOME_PACKS, ''));
	const [drive, delay] = show.boards.ash ?? [];
	expect(drive).toEqual({
		id: 'drive',
		name: 'drive',
		inputOhms: 1_000_000,
		outputOhms: 10_000,
		switched: 'midi',
		controls: ['gain', 'tone'],
		midi: {
			channel: 16,
			on: [{ kind: 'control', controller: 64, value: 0 }],
			// MIDI 1.0: velocities and values are 0 to 127.
			off: [{ kind: 'note', note: 60, velocity: 127 }],
			scenes: {},
			tempo: { kind: 'tap', controller: 93, value: 127 },
		},
		extra: { scribbles: { tape: 'blue␛[1m', marks: ['12', { at: 'noon' }, ''], none: null } },
	});
	expect(delay?.power).toMatchObject({ supply: 'S2', output: 'b', centre: 'positive' });
	expect(delay?.midi).toMatchObject({
		on: [{ kind: 'note', note: 61, velocity: 5 }],
		off: [],
		tempo: { kind: 'tap', controller: 93, value: 1 },
	});
});

test.each([
	['rigs: {bo: [{id: di, kind: direct-box, power: {supply: S9}}]}', '56: there is no supply S9'],
	[
		'  - {id: X, kind: electric-6, tuning: E standard, power: {supply: S9}}',
		'67: there is no supply S9',
	],
	[
		'boards: {ash: [{id: a, midi: {channel: 1, scenes: {wide: [{cc: 1, value: 2}, {cc: 1}]}}}]}',
		'78: this message is incomplete',
	],
	[
		'boards: {ash: [{id: a, midi: {channel: 1, off: {velocity: 1}}}]}',
		'48: this message is incomplete',
	],
	['boards: {ash: [{id: a}, {id: b}, {id: a}]}', '39: the pedal a is on this board a second time'],
])('%s is said at its place', (more, said) => {
	const lines = linesFrom(smallShow({ more }));
	expect(lines).toEqual([expect.stringContaining(`show.yaml:12:${said}`)]);
});

test('a night keeps all of it', () => {
	const show = rigged();
	expect(keptShow(JSON.parse(JSON.stringify(showRecord(show))))).toEqual(show);
});

test('units as labels write them, and nothing else', () => {
	expect(['8', '500 k', '1 M', '10k', '4.7 kohm', '16 Ω'].map(parseOhms)).toEqual([
		8, 500_000, 1_000_000, 10_000, 4_700, 16,
	]);
	expect(['', '0', '1 m', '1 K', '8 8', '-4', '1e3'].map(parseOhms)).toEqual(Array(7).fill(null));
	expect(['500 mAh', '2Ah', '1.2 ah'].map(parseCapacity)).toEqual([500, 2000, 1200]);
	expect(['500', '0 mAh', 'mAh'].map(parseCapacity)).toEqual([null, null, null]);
	expect(['6 m', '6', '30 cm', '20 ft'].map(parseMetres)).toEqual([6, 6, 0.3, 6.096]);
	expect(['0', 'long', '6 km'].map(parseMetres)).toEqual([null, null, null]);
});
