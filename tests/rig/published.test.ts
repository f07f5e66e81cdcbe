// What a rig comes to, against laws and tables from outside the project.

import { describe, expect, test } from 'vitest';
import { amplifierLoads } from '../../src/rig/amplifier-loads.ts';
import { batteriesLeft, freshHours } from '../../src/rig/battery-hours.ts';
import {
	cornerHertz,
	decibels,
	dividerRatio,
	highPassRatio,
	lowPassRatio,
	parallelOhms,
} from '../../src/rig/circuit.ts';
import { boardBytes, hexBytes, messageBytes } from '../../src/rig/midi-bytes.ts';
import { outputLoads } from '../../src/rig/supply-loads.ts';
import { quarterNotes, tempoMilliseconds } from '../../src/rig/tempo-times.ts';
import { toneCorners } from '../../src/rig/tone-corners.ts';
import { exampleRig, rigShow } from './example-rig.ts';

describe('loudspeakers together (parallel resistance)', () => {
	test.each([
		[[8, 8], 4],
		[[16, 16], 8],
		[[8, 4], 2.6667],
	])('%j is %d ohms', (all, ohms) => {
		expect(parallelOhms(all)).toBeCloseTo(ohms, 4);
	});

	test('two strings of two eights in series, side by side, are 8 ohms; a file joins each to all before it', () => {
		expect(parallelOhms([8 + 8, 8 + 8])).toBeCloseTo(8, 4);
		const { amp, cab } = exampleRig;
		const series = { ...cab('c2', 8), wired: 'series' as const };
		const load = amplifierLoads({
			rigs: { bo: [amp('head', 8), cab('c1', 8), series, cab('c3', 16)] },
		});
		expect(load[0]?.ohms).toBeCloseTo(8, 4);
	});

	test('no cabinet is no load, and one without its ohms none that is known', () => {
		const { amp, cab } = exampleRig;
		const { ohms: _, ...plain } = cab('c1', 8);
		const rigs = { bo: [amp('one', 8), amp('two', 4), plain] };
		expect(amplifierLoads({ rigs }).map(({ ohms, cabs }) => [ohms, cabs.length])).toEqual([
			[null, 0],
			[null, 1],
		]);
	});
});

describe('cords and inputs (1/(2πRC), first order; E2 is 82.4069 Hz)', () => {
	test('10 kilohms into 6 m of 100 pF', () => {
		const corner = cornerHertz(10_000, 600);
		expect(corner).toBeCloseTo(26_525.8, 1);
		expect(decibels(lowPassRatio(10_000, corner))).toBeCloseTo(-0.5771, 3);
		expect(cornerHertz(250_000, 700)).toBeCloseTo(909.46, 2);
	});

	test('a piezo of 500 pF into 1 and 10 megohms', () => {
		expect(cornerHertz(1e6, 500)).toBeCloseTo(318.31, 3);
		expect(cornerHertz(1e7, 500)).toBeCloseTo(31.831, 3);
		expect(decibels(highPassRatio(82.4069, cornerHertz(1e6, 500)))).toBeCloseTo(-12.019, 3);
		expect(decibels(highPassRatio(82.4069, cornerHertz(1e7, 500)))).toBeCloseTo(-0.604, 3);
	});

	test('dividers', () => {
		const light = dividerRatio({ sourceOhms: 10_000, inputOhms: 1e6 });
		expect(light).toBeCloseTo(0.990099, 6);
		expect(decibels(light)).toBeCloseTo(-0.0864, 4);
		expect(decibels(dividerRatio({ sourceOhms: 7_000, inputOhms: 22_000 }))).toBeCloseTo(
			-2.3995,
			4,
		);
	});

	test('of a show: the cords before the first input, a pedal of the board too, nothing past a pack', () => {
		const path = (parts: string, output: string) =>
			toneCorners(
				rigShow(`instruments: [{id: B1, kind: electric-6, tuning: E standard, output: {${output}}}]
boards: {bo: [{id: tuner}, {id: drive, input: 500 k}]}
rigs: {bo: [${parts}]}`),
			).map(({ kind, hertz }) => [kind, Math.round(hertz * 10) / 10]);
		const lead = '{id: lead, kind: cord, length: 6 m, pf-per-m: 100}';
		const back = '{id: back, kind: cord, length: 6 m, pf-per-m: 100}';
		expect(path(`${lead}, {id: board, kind: board}, ${back}`, 'ohms: 10 k')).toEqual([
			['low-pass', 26525.8],
		]);
		expect(path(`${lead}, {id: board, kind: board}`, 'pf: 500')).toEqual([['high-pass', 636.6]]);
		expect(
			path(`${lead}, {id: P, kind: pack}, {id: head, kind: amp, input: 1 M}`, 'pf: 500'),
		).toEqual([]);
		expect(path('{id: head, kind: amp, input: 1 M}', 'ohms: 10 k')).toEqual([]);
	});

	test('of a show: what is lost at 10 kHz, at the lowest string, in the first input', () => {
		const corner = (output: string, input: string) =>
			toneCorners(
				rigShow(`instruments: [{id: B1, kind: electric-6, tuning: E standard, output: {${output}}}]
rigs: {bo: [{id: lead, kind: cord, length: 6 m, pf-per-m: 100}, {id: head, kind: amp, input: ${input}}]}`),
			)[0];
		const cord = corner('ohms: 10 k', '1 M');
		expect(cord?.decibels).toBeCloseTo(-0.5771, 3);
		expect(cord?.inputDecibels).toBeCloseTo(-0.0864, 4);
		expect(corner('ohms: 7 k', '22 k')?.inputDecibels).toBeCloseTo(-2.3995, 4);
		expect(corner('pf: 500', '1 M')?.decibels).toBeCloseTo(-12.019, 3);
		expect(corner('pf: 500', '10 M')?.decibels).toBeCloseTo(-0.604, 3);
	});
});

describe('power (arithmetic)', () => {
	test('500 mAh at 12 mA', () => {
		expect(freshHours(500, 12)).toBeCloseTo(41.667, 3);
	});

	test('the sum of one output', () => {
		const pedals = [100, 20, 35, 250].map(
			(ma, index) => `{id: p${index}, power: {supply: S1, output: a, ma: ${ma}}}`,
		);
		const show = rigShow(`instruments: [{id: B1, kind: electric-6, tuning: E standard}]
supplies: [{id: S1, outputs: [{id: a, ma: 500}]}]
boards: {bo: [${pedals.join(', ')}]}`);
		expect(outputLoads(show).map(({ usedMilliamps }) => usedMilliamps)).toEqual([405]);
	});

	test('hours used are taken off, packs and pedals and active instruments alike; never under nothing', () => {
		const show =
			rigShow(`instruments: [{id: B1, kind: electric-6, tuning: E standard, power: {battery: 500 mAh, ma: 1}}]
packs: [{id: P1, battery: {hours: 6, used: 8}}]
boards: {bo: [{id: delay, power: {battery: 500 mAh, ma: 12, hours-used: 10}}, {id: old, power: {battery: 1 Ah}}]}`);
		expect(batteriesLeft(show)).toEqual([
			{ what: 'pack', player: null, id: 'P1', hoursLeft: 0 },
			{ what: 'pedal', player: 'bo', id: 'delay', hoursLeft: 500 / 12 - 10 },
			{ what: 'pedal', player: 'bo', id: 'old', hoursLeft: null },
			{ what: 'instrument', player: null, id: 'B1', hoursLeft: 500 },
		]);
	});
});

describe('a delay from the tempo (60000 over beats a minute)', () => {
	test.each([
		[120, 500, 375],
		[96, 625, 468.75],
		[87, 689.655, 517.241],
	])('at %d', (tempo, quarter, dottedEighth) => {
		expect(tempoMilliseconds('quarter', tempo)).toBeCloseTo(quarter, 3);
		expect(tempoMilliseconds('dotted-eighth', tempo)).toBeCloseTo(dottedEighth, 3);
	});

	test('three of a triplet in the time of two; what is no note value is none', () => {
		expect(3 * (quarterNotes('triplet-quarter') ?? 0)).toBeCloseTo(2, 9);
		expect(quarterNotes('eighth triplet')).toBeCloseTo(1 / 3, 9);
		expect(['noon', '', 'dotted', 'dotted-eighth-triplet', '7'].map(quarterNotes)).toEqual(
			Array(5).fill(null),
		);
	});
});

describe('messages (MIDI 1.0 message table; bank select as controllers 0 and 32)', () => {
	test.each([
		// Displayed programs count from 1, as sent from 0.
		[{ kind: 'program', program: 0 } as const, 1, 'C0 00'],
		[{ kind: 'program', program: 127 } as const, 10, 'C9 7F'],
		[{ kind: 'program', program: 4 } as const, 16, 'CF 04'],
		[{ kind: 'control', controller: 7, value: 100 } as const, 1, 'B0 07 64'],
		[{ kind: 'control', controller: 64, value: 127 } as const, 3, 'B2 40 7F'],
		[{ kind: 'bank', bank: 300 } as const, 2, 'B1 00 02 B1 20 2C'],
		[{ kind: 'note', note: 60, velocity: 64 } as const, 1, '90 3C 40'],
		[{ kind: 'note', note: 60, velocity: 0 } as const, 16, '8F 3C 00'],
	])('%j on channel %d', (message, channel, bytes) => {
		expect(hexBytes(messageBytes(message, channel))).toBe(bytes);
	});

	test('a whole board in its order: on, off, a scene with its bank first', () => {
		const show = rigShow(`instruments: [{id: B1, kind: electric-6, tuning: E standard}]
boards:
  bo:
    - {id: drive, midi: {channel: 1, on: [{cc: 64, value: 127}], off: [{cc: 64, value: 0}]}}
    - {id: feet}
    - {id: delay, midi: {channel: 2, off: [{program: 0}], scenes: {wide: [{bank: 300, program: 11}]}}}`);
		const pedals = show.boards.bo ?? [];
		const wide = { delay: { on: true, settings: { scene: 'wide' } }, drive: { on: true } };
		expect(hexBytes(boardBytes(pedals, wide))).toBe('B0 40 7F B1 00 02 B1 20 2C C1 0B');
		expect(hexBytes(boardBytes(pedals, {}))).toBe('B0 40 00 C1 00');
	});
});
