// One sound from two sources: how far apart they are, what they cancel, and that it is said before the doors.

import { describe, expect, test } from 'vitest';
import { checkList } from '../../src/report/check-list.ts';
import { rigPage } from '../../src/report/rig-page.ts';
import {
	firstCancelled,
	lowsLostBelow,
	speedOfSound,
	twoSources,
} from '../../src/rig/two-sources.ts';
import { showFrom } from '../showfile/show-files.ts';
import { rigShow } from './example-rig.ts';

describe('the laws', () => {
	test('the speed of sound, as a course on physical models of instruments has it: 1085.1 and 1124.1 feet a second at 0 and 20 °C', () => {
		// J. O. Smith, Physical Audio Signal Processing, "Speed of Sound in Air". Handbooks differ by a fifth of a per cent.
		for (const [celsius, feet] of [
			[0, 1085.1],
			[20, 1124.1],
		] as const) {
			expect(Math.abs(speedOfSound(celsius) / (feet * 0.3048) - 1)).toBeLessThan(0.002);
		}
	});

	test('a millisecond has its first null at 500 Hz', () => {
		// F. A. Everest, Master Handbook of Acoustics, comb filters: "the 1/(2t) expression gives a null at 500 Hz".
		expect(firstCancelled(1, false)).toBe(500);
	});

	/** Two equal sines added sample by sample: the loudest of a second, of one alone it is 1. */
	function together(hertz: number, milliseconds: number, isOpposed: boolean): number {
		const at = (seconds: number) => Math.sin(2 * Math.PI * hertz * seconds);
		const sign = isOpposed ? -1 : 1;
		return Math.max(
			...Array.from({ length: 4800 }, (_, sample) =>
				Math.abs(at(sample / 48_000) + sign * at(sample / 48_000 - milliseconds / 1000)),
			),
		);
	}

	test.each([
		[0.87, false],
		[0.87, true],
		[2.3, false],
		[7, true],
	])('two sines added cancel there and nowhere below it: %d ms, opposed %s', (ms, isOpposed) => {
		const first = firstCancelled(ms, isOpposed) ?? 0;
		expect(together(first, ms, isOpposed)).toBeLessThan(1e-9);
		for (let share = 0.1; share < 0.95; share += 0.1) {
			expect(together(first * share, ms, isOpposed)).toBeGreaterThan(0.1);
		}
	});

	test('of opposite polarity, two are weaker than one up to a sixth of a period', () => {
		expect(together(lowsLostBelow(1) * 0.98, 1, true)).toBeLessThan(1);
		expect(together(lowsLostBelow(1) * 1.02, 1, true)).toBeGreaterThan(1);
	});
});

const guitar = (output: string) =>
	`instruments: [{id: B1, name: Bay, slot: "4", kind: acoustic-6, tuning: E standard, output: ${output}}]`;
const ONE = 'instruments: [{id: B1, kind: bass-4, tuning: E standard}]';

const offsets = (more: string) =>
	twoSources(rigShow(more)).map(({ offset }) =>
		offset === null
			? null
			: {
					...offset,
					milliseconds: Number(offset.milliseconds.toFixed(3)),
					cancelledHertz: offset.cancelledHertz && Math.round(offset.cancelledHertz),
				},
	);

describe('where the file gives what is needed', () => {
	// By hand: 0.3 m over 343.2 m/s is 0.874 ms.
	const LATER = { milliseconds: 0.874, later: 1, isOpposed: false, cancelledHertz: 572 };

	test('a piezo and a microphone', () => {
		expect(offsets(guitar('[{pf: 500}, {name: microphone, distance: 30 cm}]'))).toEqual([LATER]);
	});

	test('a direct box and the microphone of the amplifier behind it', () => {
		const rig = (cab: string) =>
			offsets(
				`${ONE}\nrigs: {bo: [{id: box, kind: direct-box}, {id: head, kind: amp}, {id: cab, kind: cab, ${cab}}]}`,
			);
		expect(rig('distance: 30 cm')).toEqual([LATER]);
		expect(rig('distance: 30 cm, polarity: inverted')).toEqual([
			{ ...LATER, isOpposed: true, cancelledHertz: 1144 },
		]);
		expect(rig('distance: 30 cm, delay: 1 ms')).toMatchObject([{ milliseconds: 1.874 }]);
		expect(rig('ohms: 8')).toEqual([null]);
		expect(rig('delay: 0.874 ms')).toEqual([LATER]);
		// What is late before the amplifier says nothing of where its microphone stands.
		const pack = (cab: string) =>
			offsets(
				`${ONE}\nrigs: {bo: [{id: box, kind: direct-box}, {id: p, kind: pack, delay: 3 ms}, {id: head, kind: amp}, {id: cab, kind: cab${cab}}]}`,
			);
		expect(pack('')).toEqual([null]);
		expect(pack(', distance: 30 cm')).toMatchObject([{ milliseconds: 3.874 }]);
	});

	test('warmer air is faster', () => {
		const [offset] = offsets(
			`stage: {temperature: 40}\n${guitar('[{pf: 500}, {distance: 30 cm}]')}`,
		);
		// 0.3 m over 331.3 m/s times the root of 313.15 over 273.15.
		expect(offset?.milliseconds).toBe(0.846);
	});

	test('two amplifiers, the nearer microphone first or last', () => {
		const rig = (one: string, other: string) =>
			offsets(
				`${ONE}\nrigs: {bo: [{id: split, kind: splitter}, {id: a, kind: amp}, {id: c1, kind: cab, distance: ${one}}, {id: b, kind: amp}, {id: c2, kind: cab, distance: ${other}}]}`,
			)[0];
		expect(rig('5 cm', '35 cm')).toEqual(LATER);
		expect(rig('35 cm', '5 cm')).toEqual({ ...LATER, later: 0 });
		expect(rig('2 in', '5.08 cm')).toMatchObject({ milliseconds: 0, cancelledHertz: null });
	});

	test('a microphone before each of two cabinets of one amplifier', () => {
		expect(
			offsets(
				`${ONE}\nrigs: {bo: [{id: a, kind: amp}, {id: c1, kind: cab, distance: 5 cm}, {id: c2, kind: cab, distance: 35 cm}]}`,
			),
		).toEqual([LATER]);
	});

	test('a delay on the nearer one lines them up', () => {
		expect(offsets(guitar('[{pf: 500, delay: 0.874 ms}, {distance: 30 cm}]'))).toMatchObject([
			{ milliseconds: 0, cancelledHertz: null },
		]);
	});
});

describe('in words', () => {
	const phaseOf = (more: string) => {
		const page = rigPage(rigShow(more)).join(' ').replace(/\s+/g, ' ');
		return /PHASE (.*?)(?: LOOK AT| TEMPO|$)/.exec(page)?.[1];
	};
	const found = (more: string) =>
		checkList(rigShow(more), { findings: [], warnings: [], root: null }).map(({ words }) => words);

	test('how late, what cancels, which polarity, what lines them up', () => {
		expect(phaseOf(guitar('[{pf: 500}, {name: microphone, distance: 30 cm}]'))).toBe(
			'4 Bay: piezo and microphone carry the same sound, microphone 0.87 ms later. They cancel 572 Hz first. Leave the polarity at the desk as it is: that keeps the lows. Delay piezo by 0.87 ms there to line them up.',
		);
		expect(phaseOf(guitar('[{pf: 500, polarity: inverted}, {distance: 30 cm}]'))).toBe(
			'4 Bay: piezo and microphone carry the same sound, microphone 0.87 ms later. Piezo has its polarity inverted: they cancel the lows, and 1.1 kHz. Flip it at the desk to keep the lows; they then cancel 572 Hz first. Delay piezo by 0.87 ms there to line them up.',
		);
		expect(phaseOf(guitar('[{pf: 500}, {ohms: 10 k, polarity: inverted}]'))).toBe(
			'4 Bay: piezo and pickup carry the same sound at the same time. Pickup has its polarity inverted: they cancel each other. Flip it at the desk to keep the lows.',
		);
		expect(phaseOf(guitar('[{pf: 500}, {name: microphone}]'))).toContain(
			'Whether they add or cancel is not known from the file',
		);
	});

	test('a finding where they cancel between the lowest and the highest note, and none beyond', () => {
		expect(found(guitar('[{pf: 500}, {distance: 30 cm}]'))).toEqual([
			"4 Bay's piezo and microphone reach the desk 0.87 ms apart and cancel around 572 Hz. Delay piezo by that at the desk, or leave one of them out.",
		]);
		// Up to E6, 1318.5 Hz: 12 cm cancel 1430 Hz, 14 cm 1226 Hz.
		expect(found(guitar('[{pf: 500}, {distance: 12 cm}]'))).toEqual([]);
		expect(found(guitar('[{pf: 500}, {distance: 14 cm}]'))).toHaveLength(1);
		// Down to E2, 82.4 Hz: 2.2 m cancel 78 Hz, 2 m 86 Hz.
		expect(found(guitar('[{pf: 500}, {distance: 2.2 m}]'))).toEqual([]);
		expect(found(guitar('[{pf: 500}, {distance: 2 m}]'))).toHaveLength(1);
	});

	test('an instrument that several may have is said once', () => {
		const output = 'output: [{pf: 500}, {distance: 30 cm}]';
		const show = showFrom(`format: rackside/1
players: [{id: bo}, {id: ash}]
instruments: [{id: B1, kind: acoustic-6, tuning: E standard, ${output}}]
songs: [{id: one, length: "3:00", hands: {bo: B1}}]
set: [one]
`);
		expect(twoSources(show)).toHaveLength(1);
	});

	test('opposite polarity is worse, and said where the lowest string loses by it', () => {
		expect(found(guitar('[{pf: 500}, {ohms: 10 k, polarity: inverted}]'))).toEqual([
			"4 Bay's piezo and pickup reach the desk with opposite polarity: the lows cancel. Flip the polarity of one at the desk.",
		]);
		const rig = (metres: number) =>
			found(
				`${ONE}\nrigs: {bo: [{id: box, kind: direct-box}, {id: head, kind: amp}, {id: cab, kind: cab, ohms: 8, distance: ${metres} m, polarity: inverted}]}`,
			)[0];
		// E1 is 41.2 Hz: a sixth of its period is 4.05 ms, 1.39 m.
		expect(rig(1.3)).toContain('the lows cancel');
		expect(rig(1.5)).toContain('cancel around 229 Hz');
		// Two of opposite polarity that come at the same time are silence: a delay alone would make it so.
		expect(rig(1.5)).toContain('Flip the polarity of one and delay direct box by that');
	});
});
