// What a show file says of the rig, read: units, supplies, messages.

import { expect, test } from 'vitest';
import { parseCapacity, parseMetres, parseOhms } from '../../src/showfile/electric-measure.ts';
import { keptShow, showRecord } from '../../src/showfile/show-record.ts';
import { showFrom, smallShow } from './show-files.ts';

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

const show = showFrom(
	smallShow({ more: RIG }).replace(
		'{id: P1}',
		'{id: P1, channel: G1, battery: {hours: 6, used: 2.5}}',
	),
);

test('the way of the sound, with its units', () => {
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
	const [drive, delay] = show.boards.ash ?? [];
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

test('a night keeps all of it', () => {
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
