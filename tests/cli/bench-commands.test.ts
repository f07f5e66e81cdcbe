// The commands of the bench as a user types them: tuning, strings, setup.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { runCommand } from './run-command.ts';

const folder = mkdtempSync(join(tmpdir(), 'rackside-bench-'));
afterAll(() => rmSync(folder, { recursive: true }));

const SHOW = `
format: rackside/1
players:
  - {id: ash, name: Ash}
  - {id: bo, name: Bo}
instruments:
  - id: A1
    name: Amber
    slot: "1"
    kind: electric-6
    for: [ash]
    tuning: E standard
    scale: 25.5 in
    strings: [10, 13, 17, 26w, 36w, 46w]
    setup: {action: [1.9, 1.6], relief: 8 thou, saddle-screw: 0.7}
  - {id: A2, slot: "2", kind: electric-6, for: [ash], tuning: E standard, bridge: floating}
  - id: D1
    name: Dozen
    slot: "3"
    kind: electric-12
    for: [bo]
    tuning: E standard
    scale: 25.5 in
    strings: [10, 10, 14, 14, 9, 18, 12w, 27w, 18w, 39w, 27w, 49w]
  - id: H1
    name: Heavy
    slot: "4"
    kind: electric-6
    tuning: E standard
    scale: 24.75 in
    strings: [10, 13, 17, 26w, 36w, 46w]
    unit-mass: {26w: 2.3, 36w: 4.3, 46w: 7.0}   # invented round figures
  - id: H2
    slot: "6"
    kind: electric-6
    tuning: E standard
    scale: 24.75 in
    strings: [9, 11, 16, 24w, 32w, 42w]
  - {id: C1, slot: "5", kind: bass-4, tuning: E standard}
songs:
  - id: one
    title: One
    hands: {ash: {instrument: A1}, bo: {instrument: D1, capo: 3}}
    shapes: {ash: 022100, bo: ["320003"]}
  - {id: two, title: Two, hands: {ash: {instrument: A1, tuning: half-step down}}, shapes: {ash: [022100]}}
set: [one, two]
gauges: [9, 9.5, 10, 10.5, 11, 11.5, 12, 12.5, 13, 13.5, 14, 15, 16, 17, 18, 19, 20, 21, 22, 24]
stock:
  - {gauge: 26w, count: 2}
  - {gauge: 27w, count: 2}
  - {gauge: 28w, count: 2}
  - {gauge: 30w, count: 2}
  - {gauge: 32w, count: 2}
  - {gauge: 34w, count: 2}
  - {gauge: 35w, count: 0}
  - {gauge: 36w, count: 2}
  - {gauge: 38w, count: 2}
  - {gauge: 42w, count: 2}
  - {gauge: 44w, count: 2}
  - {gauge: 46w, count: 2}
  - {gauge: 48w, count: 2}
  - {gauge: 52w, count: 2}
  - {gauge: 53w, count: 2}
  - {gauge: 54w, count: 2}
  - {gauge: 56w, count: 2}
  - {gauge: 58w, count: 2}
  - {gauge: 60w, count: 2}
offsets:
  - {player: ash, tuning: half-step down, cents: {3: -3}}
stage: {temperature: 26, soundcheck: 18, humidity: 70}
`;
writeFileSync(join(folder, 'bench.yaml'), SHOW);

async function run(...argv: string[]) {
	const place = { cwd: folder, data: join(folder, 'data'), wallMs: Date.UTC(2026, 5, 12) };
	const ran = await runCommand(place, ...argv);
	return { ...ran, json: () => JSON.parse(ran.out) };
}

const tuning = (...args: string[]) => run('tuning', 'bench.yaml', ...args);
const strings = (...args: string[]) => run('strings', 'bench.yaml', ...args);
const setup = (...args: string[]) => run('setup', 'bench.yaml', ...args);

describe('tuning', () => {
	test('E standard to drop D, reckoned by hand', async () => {
		const { code, json } = await tuning('A1', '--to', 'drop D', '--json');
		const card = json();
		expect(code).toBe(0);
		expect(card).toMatchObject({ instrument: 'A1', from: 'E standard', to: 'drop D', capo: 0 });
		// Two semitones under 82.4069 Hz, 440 × 2^(−31/12); one string moved takes the touch-up and 15 s.
		expect(card.strings[0]).toMatchObject({
			string: 6,
			note: 'D2',
			hz: 73.4162,
			move: -2,
			cents: 0,
		});
		expect(card.seconds).toBe(60);
		expect(card.steps).toEqual([
			{ string: 6, from: 'E2', to: 'D2', move: -2, how: 'down', round: 1 },
		]);
		// By hand: 7850 kg/m³ × π/4 × (0.254 mm)² × (2 × 0.6477 m × 329.6276 Hz)².
		expect(card.strings[5].tensionN).toBeCloseTo(72.524, 2);
		// A string two semitones lower bears 2^(−1/3) of what it bore.
		const before = (await tuning('A1', '--json')).json();
		expect(card.strings[0].tensionN / before.strings[0].tensionN).toBeCloseTo(0.793_701, 5);
		expect(card.changeN).toBeCloseTo(card.totalN - before.totalN, 3);
		// D2 to A2 is a fifth, 700 against 701.955 cents, 3 × 73.4162 − 2 × 110 a second.
		expect(card.byEar[0]).toEqual({
			strings: [6, 5],
			interval: 'P5',
			centsFromPure: -1.955,
			beatsHz: 0.2486,
		});
	});

	test('and back: the same string up', async () => {
		const { json } = await tuning('A1', '--from', 'drop D', '--json');
		expect(json().why).toBe('End every string on its way up.');
		expect(json().steps).toEqual([
			{ string: 6, from: 'D2', to: 'E2', move: 2, how: 'up', round: 1 },
		]);
	});

	test('half-step down with the player’s offset in the target', async () => {
		const { json, out } = await tuning('A1', '--to', 'Eb', '--json');
		const third = json().strings[3];
		// Gb3 is 184.9972 Hz; three cents under it 184.9972 × 2^(−3/1200) = 184.6769.
		expect(third).toMatchObject({ string: 3, note: 'Gb3', hz: 184.6769, cents: -3 });
		expect(JSON.parse(out).byEar[3].centsFromPure).toBeCloseTo(13.6863 + 3, 3);
		const { out: printed } = await tuning('A1', '--to', 'Eb');
		expect(printed).toContain('-3.0 c in it');
		expect(printed).not.toContain('Down before up');
	});

	test('capo 3 on a twelve-string: open targets, and what is heard', async () => {
		const { json } = await tuning('D1', '--capo', '3', '--json');
		const [low, high] = json().strings;
		expect(low).toMatchObject({ string: 12, course: 6, note: 'E2', hz: 82.4069, sounds: 'G2' });
		expect(high).toMatchObject({ string: 11, course: 6, note: 'E3', hz: 164.8138, sounds: 'G3' });
		expect(json().sameSound).toContain('capo 3 in E shapes = capo 0 in G shapes');
	});

	test('a capo over some strings only', async () => {
		const { json } = await tuning('A1', '--capo', '2', '--covers', '3 4 5', '--json');
		expect(json().strings.map(({ sounds }: { sounds: string }) => sounds)).toEqual([
			'E2',
			'B2',
			'E3',
			'A3',
			'B3',
			'E4',
		]);
	});

	test('a chord shape beats as it is played', async () => {
		const { json } = await tuning('A1', '--shape', '022100', '--json');
		// E3 to G#3 is a tempered third: 4 × 207.6523 − 5 × 164.8138.
		expect(json().shape[2]).toMatchObject({ strings: [4, 3], interval: 'M3', beatsHz: 6.5405 });
	});

	test('shapes of the songs that have it in this tuning, as their players hold it', async () => {
		const inE = (await tuning('A1', '--json')).json().songShapes;
		expect(inE).toMatchObject([
			{ song: 'one', player: 'ash', capo: 0, shape: '022100', name: 'E' },
		]);
		expect(inE[0].byEar[2]).toMatchObject({ strings: [4, 3], interval: 'M3', beatsHz: 6.5405 });
		// Half a step down with the third three cents flat: the third string is stopped at the first fret,
		// so its third over the fourth string is 13.6863 − 3 cents wide.
		const down = (await tuning('A1', '--to', 'Eb', '--json')).json().songShapes;
		expect(down).toMatchObject([{ song: 'two', name: 'E' }]);
		expect(down[0].byEar[2].centsFromPure).toBeCloseTo(10.6863, 3);
		expect((await tuning('A1', '--to', 'Eb')).out).toContain('By ear, 022100 (E), Ash in Two:');
	});

	test('a shape on a twelve-string is one fret a course, both strings of it', async () => {
		const [shape] = (await tuning('D1', '--json')).json().songShapes;
		expect(shape).toMatchObject({ song: 'one', player: 'bo', capo: 3, name: 'G' });
		// Capo 3 and third fret on E2 and E3, each an octave apart and neither beating.
		expect(shape.byEar[0]).toEqual({
			strings: [12, 11],
			interval: 'P8',
			centsFromPure: 0,
			beatsHz: 0,
		});
		const asked = (await tuning('D1', '--shape', '320003', '--capo', '3', '--json')).json();
		expect(asked.shape).toEqual(shape.byEar);
	});

	test('another reference', async () => {
		const { json } = await tuning('A1', '--reference', '442', '--json');
		expect(json().strings[0].hz).toBeCloseTo(82.7815, 3);
	});

	test('on a floating bridge all strings, twice round; without gauges no tension', async () => {
		const { code, json } = await tuning('A2', '--to', 'drop D', '--json');
		expect(code).toBe(0);
		expect(json().steps).toHaveLength(12);
		expect(json().totalN).toBeNull();
	});

	test('a string near breaking ends with 1 and says so', async () => {
		const { code, out } = await tuning('A1', '--to', 'E2 A2 D3 G3 B3 A4');
		expect(code).toBe(1);
		expect(out).toContain('String 1 is near breaking');
		expect(out).toContain('Steps, about');
	});

	test('a string that breaks before the pitch gets no steps there', async () => {
		const { code, out } = await tuning('A1', '--to', 'E2 A2 D3 G3 B3 E5');
		expect(code).toBe(1);
		expect(out).toContain('String 1 breaks before this pitch. Do not tune up to it.');
		expect(out).not.toContain('Steps');
	});
});

describe('strings', () => {
	test('every field, plain steel by hand', async () => {
		const { code, json } = await strings('A1', '--json');
		const set = json();
		expect(code).toBe(0);
		expect(set.strings[0]).toMatchObject({ string: 1, gaugeIn: 0.01, massGPerM: 0.39777 });
		expect(set.strings[0].tensionLbf).toBeCloseTo(16.304, 2);
		expect(set.strings[0].stressMPa).toBeCloseTo(1431.28, 1);
		expect(set.strings[0].headroomSemitones).toBeCloseTo(5.484, 2);
		expect(set.strings[0].inharmonicity).toBeCloseTo(1.3481e-5, 8);
		expect(set.uncertain).toEqual([4, 5, 6]);
		const sum = set.strings.reduce(
			(all: number, one: { tensionN: number }) => all + one.tensionN,
			0,
		);
		expect(set.totalN).toBeCloseTo(sum, 2);
	});

	test('a unit mass given makes a wound string exact', async () => {
		const { json } = await strings('H1', '--json');
		expect(json().uncertain).toEqual([]);
		// An invented 7.0 g/m × (2 × 0.62865 m × 82.4069 Hz)².
		expect(json().strings[5].tensionN).toBeCloseTo(75.1462, 1);
	});

	test('drop C on 24.75 in: gauges in stock keep the tension of the present set within 3 %', async () => {
		const { json } = await strings('H2', '--to', 'drop C', '--json');
		const kept = json().strings.map((one: { keepsFeel: Record<string, unknown> }) => one.keepsFeel);
		for (const one of kept) expect(Math.abs(one.off)).toBeLessThanOrEqual(0.03);
		// Two semitones down wants a gauge 2^(2/12) = 1.122 times as thick: 0.009 to 0.0101, 0.016 to 0.0180.
		expect(kept[0].gaugeIn).toBe(0.01);
		expect(kept[2].gaugeIn).toBe(0.018);
		expect(kept.every(({ gaugeIn }: { gaugeIn: number }) => gaugeIn !== 0.035)).toBe(true);
		expect(kept[5].gaugeIn).toBeGreaterThanOrEqual(0.052);
		const { out } = await strings('H2', '--to', 'drop C');
		expect(out).toMatch(
			/With the gauges of the same feel: \d+ N, -?[0-2]\.\d % of what it bears now/,
		);
		expect(out).toContain('Cutting its slots is a luthier’s work');
		expect((await strings('A1')).out).not.toContain('Thicker strings');
	});

	test('an instrument without strings says what to add', async () => {
		const { code, err } = await strings('C1');
		expect(code).toBe(2);
		expect(err).toContain('Add strings');
	});
});

test('a stage eight degrees warmer than at soundcheck: which to touch first', async () => {
	const { out } = await run('check', 'bench.yaml', '--json');
	const { findings } = JSON.parse(out);
	const said = (code: string) =>
		findings.find((one: { code: string }) => one.code === code)?.text as string;
	// By hand for slot 1: the slackest is the plain third, 0.017 in at G3 on 25.5 in, 4 × 7850 × (0.6477 ×
	// 195.9977)² = 506 MPa; 600 × log2(1 − 12e-6 × 203.4e3 × 8 / 506) = −34.1 cents for the string alone;
	// a third to two thirds of that is what is seen (from memory).
	expect(said('stage-drift')).toContain('A1 (string 3, 11 to 23 c)');
	expect(said('stage-drift')).toContain('8 °C warmer: touch first H2 (string 6, 13 to 26 c flat)');
	expect(said('stage-drift')).toContain('The order is surer than the figures');
	expect(said('stage-humidity')).toContain('No cents are given');
});

describe('setup', () => {
	test('saddles move the right way, string 6 first', async () => {
		const { code, json } = await setup('A1', '--at12', '0 2 5 -1 0 3', '--json');
		expect(code).toBe(0);
		const { saddle } = json();
		expect(saddle[0]).toMatchObject({ string: 6, cents: 0, moveMm: 0, towards: 'none' });
		expect(saddle[2]).toMatchObject({ string: 4, cents: 5, moveMm: 1.8788, towards: 'bridge' });
		expect(saddle[3]).toMatchObject({ string: 3, towards: 'nut' });
		expect(saddle[2].turns).toBeCloseTo(1.8788 / 0.7, 3);
	});

	test('what was recorded is there the next time, with what drifted', async () => {
		const kept = await setup(
			'A1',
			'--record',
			'action 2.0 1.6, relief 12 thou',
			'--at12',
			'1 1 1 1 1 1',
		);
		expect(kept).toMatchObject({ code: 0, err: '' });
		expect(kept.out).toContain('Kept in the gear journal.');
		const { json } = await setup('A1', '--json');
		expect(json().measured).toEqual({ actionLast: [2, 1.6], relief: 0.3048 });
		expect(json().measuredAt).toBe('2026-06-12T00:00:00.000Z');
		expect(json().drift).toEqual([
			{ what: 'actionLast', millimetres: [0.1, 0] },
			{ what: 'relief', millimetres: [0.1016] },
		]);
		expect(json().trussRod[0]).toContain('tighten a quarter turn');
		expect(json().saddle).toHaveLength(6);
		const later = await setup('A1', '--record', 'relief 0.2', '--json');
		expect(later.json().measured).toEqual({ actionLast: [2, 1.6], relief: 0.2 });
		expect(later.json().since).toEqual([{ what: 'relief', change: [-0.1048], days: 0 }]);
		expect(later.json().history).toMatchObject([
			{ measures: { relief: [0.2] }, at12: null },
			{ tuning: 'E standard', at12: [1, 1, 1, 1, 1, 1] },
		]);
		expect((await setup('A1')).out).toContain('relief: moved -0.10 mm since earlier that day');
		expect((await setup('A1', '--unit', '64ths')).out).toContain('/64 in');
	});

	test('a fret out of its place, and the scale it would be right for', async () => {
		const { json } = await setup('A1', '--fret', '12 325', '--json');
		// 1200 × log2(647.7 / (647.7 − 325)) − 1200, and twice 325.
		expect(json().fret).toEqual({ fret: 12, fromNutMm: 325, cents: 6.1586, scaleMm: 650 });
	});

	test('a body that rings: band and notch for the desk', async () => {
		const { json } = await setup('A1', '--feedback', '110', '--json');
		// 110 Hz lies between 89.1 and 112.2, the edges of the 100 Hz band.
		expect(json().feedback).toMatchObject({ hz: 110, band: 100, lowHz: 89.1251, highHz: 112.2018 });
		expect((await setup('A1', '--feedback', '110')).out).toContain('pull the 100 Hz band');
	});

	test('frets by the scale', async () => {
		const { json } = await setup('A1', '--frets', '--json');
		expect(json().frets[11]).toBe(323.85);
	});
});

describe('what cannot be used ends with 2 and one sentence', () => {
	test.each([
		[['tuning', 'bench.yaml', 'Q9'], 'no such instrument'],
		[['tuning', 'bench.yaml', 'A1', '--to', 'drip D'], 'Did you mean drop D?'],
		[
			['tuning', 'bench.yaml', 'A1', '--capo', '13'],
			'--capo needs a whole number (found 13; expected 0 to 12)',
		],
		[
			['tuning', join(import.meta.dirname, '../../shows/folk.yaml'), 'U1', '--capo', '2'],
			'takes no capo',
		],
		[
			['tuning', 'bench.yaml', 'A1', '--reference', '399'],
			'--reference needs a number (found 399; expected 400 to 480)',
		],
		[['tuning', 'bench.yaml', 'A1', '--shape', 'E'], 'not a chord shape'],
		[['tuning', 'bench.yaml', 'A1', '--shape', '02210'], '6 frets, one per string'],
		[['tuning', 'bench.yaml', 'D1', '--shape', '02210'], '6 frets, one per course'],
		[['tuning', 'bench.yaml', 'A1', '--covers', '7'], 'from 1 to 6'],
		[['strings', 'bench.yaml', 'A1', '--scale', '25.5'], 'with their unit'],
		[['setup', 'bench.yaml', 'A1', '--at12', '0 1'], '6 numbers'],
		[['setup', 'bench.yaml', 'A1', '--fret', '40 3'], '--fret cannot be read'],
		[['setup', 'bench.yaml', 'A1', '--unit', 'cm'], 'mm, thou, 64ths'],
		[['setup', 'bench.yaml', 'A1', '--record', 'actoin 2'], 'Did you mean action?'],
		[['setup', 'bench.yaml', 'A1', '--record', 'relief much'], '--record cannot be read'],
		[['setup', 'bench.yaml', 'C1', '--at12', '0 0 0 0'], 'has no scale'],
	])('%j', async (argv, words) => {
		const { code, out, err } = await run(...argv);
		expect({ code, out }).toEqual({ code: 2, out: '' });
		expect(err).toContain(words);
		expect(err.trim().split('\n')).toHaveLength(1);
	});
});
