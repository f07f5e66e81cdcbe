// What a show file says for the bench, read: set-up targets, masses of strings, offsets, the stage. What it does not
// say is left out, and what cannot be meant is said with its place.

import { expect, test } from 'vitest';
import { linesFrom, showFrom, smallShow } from './show-files.ts';

const BENCH = `  - id: X
    kind: electric-6
    tuning: E standard
    setup: {action: [2 mm, 1.5 mm], action-first: 0.5 mm, relief: 0.2 mm, pickup: [3 mm, 2.5 mm], nut: 0.4 mm, saddle-screw: 0.5 mm}
    unit-mass: {10: 0.4}
  - {id: Y, kind: electric-6, tuning: E standard, setup: {relief: 0.01 in}}
  - {id: Z, kind: electric-6, tuning: E standard, setup: {nut: 0.5 mm}}
unit-mass: {46w: 6.8}
offsets:
  - {player: ash, tuning: DROP D, cents: {3: -4}}
  - {instrument: C1, tuning: drop d, cents: {4: 5}}
  - {tuning: GDAE, cents: {1: 2, 24: 1}}
stage: {temperature: 30, humidity: 40}
`;

test('targets of a set-up in millimetres, each left out where the file is silent', () => {
	const [, , plain, full, bare, other] = showFrom(smallShow({ more: BENCH })).instruments;
	expect(full?.setUp).toEqual({
		actionFirst: [0.5],
		actionLast: [2, 1.5],
		relief: 0.2,
		pickup: [3, 2.5],
		nut: [0.4],
		saddleScrew: 0.5,
	});
	// An international inch is 25.4 mm.
	expect(bare?.setUp).toStrictEqual({ relief: 0.254 });
	expect(other?.setUp).toStrictEqual({ nut: [0.5] });
	expect(plain).not.toHaveProperty('setUp');
});

test('masses of strings, of the show and of one instrument', () => {
	const show = showFrom(smallShow({ more: BENCH }));
	expect(show.unitMass).toEqual({ '46w': 6.8 });
	expect(show.instruments.map(({ unitMass }) => unitMass)).toEqual([
		...[undefined, undefined, undefined],
		{ '10': 0.4 },
		...[undefined, undefined],
	]);
});

test('offsets with their tunings by the name that everybody knows them by', () => {
	expect(showFrom(smallShow({ more: BENCH })).offsets).toStrictEqual([
		{ player: 'ash', tuning: 'drop D', cents: { '3': -4 } },
		{ instrument: 'C1', tuning: 'drop D', cents: { '4': 5 } },
		{ tuning: 'GDAE', cents: { '1': 2, '24': 1 } },
	]);
});

test('the stage', () => {
	const stageOf = (more: string) => showFrom(smallShow({ more })).stage;
	expect(stageOf(BENCH)).toEqual({ temperature: 30, soundcheck: null, humidity: 40 });
	expect(stageOf('stage: {soundcheck: 18}')).toEqual({
		...{ temperature: null, soundcheck: 18, humidity: null },
	});
});

test('a file that says nothing for the bench makes a show without it', () => {
	const show = showFrom(smallShow());
	for (const key of ['unitMass', 'offsets', 'stage']) expect(show).not.toHaveProperty(key);
	for (const key of ['unitMass', 'setUp']) expect(show.instruments[0]).not.toHaveProperty(key);
});

test.each([
	[
		'offsets: [{instrument: C1, cents: {4: 1, 5: 2}}]',
		['42: offsets go by string number (found 5; expected a number from 1 to 4).'],
	],
	[
		'offsets: [{cents: {24: 1, 25: 2, 0: 1, 100: 1, x: 1, 1x: 1, 1e1: 1, +1: 1}}]',
		['27', '34', '40', '48', '54', '61', '69'].map((column, index) => {
			const found = ['25', '0', '100', 'x', '1x', '1e1', '+1'][index];
			return `${column}: offsets go by string number (found ${found}; expected a number from 1 to 24).`;
		}),
	],
	[
		'offsets: [{instrument: C9, cents: {5: 2}}]',
		[
			'24: there is no instrument C9 (expected A1, A2, C1). Add it to instruments, or correct it here.',
		],
	],
	[
		'offsets: [{player: ahs, cents: {1: 1}}]',
		['20: there is no player ahs (expected ash, bo). Did you mean ash?'],
	],
	[
		'offsets: [{tuning: nonsense, cents: {1: 2}}]',
		[
			'20: tuning is one that no kind of instrument has (found nonsense; expected a name such as drop D, or notes with their octaves).',
		],
	],
	[
		'unit-mass: {46w: 6.8, heavy: 2}',
		[
			'23: masses go by gauge (found heavy; expected thousandths of an inch such as 10 or 46w, or "0.25 mm"; w means wound).',
		],
	],
])('%s', (more, said) => {
	expect(linesFrom(smallShow({ more }))).toEqual(said.map((one) => `show.yaml:12:${one}`));
});

test('a mass of an instrument that has no gauge is said at its place', () => {
	const more = '  - {id: X, kind: electric-6, tuning: E standard, unit-mass: {10: 0.4, heavy: 2}}';
	expect(linesFrom(smallShow({ more }))[0]).toMatch(/^show\.yaml:12:72: masses go by gauge/);
});

test('a tuning of offsets is one of the instrument that they name', () => {
	const [line = ''] = linesFrom(
		smallShow({ more: 'offsets: [{instrument: C1, tuning: open G, cents: {1: 2}}]' }),
	);
	expect(line).toMatch(/^show\.yaml:12:36: tuning is not a tuning of this kind .* \(bass-4\)/);
});
