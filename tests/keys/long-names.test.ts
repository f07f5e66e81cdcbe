// Questions at 80 by 24 in a show whose names are all too long: the way out is in sight, every pedal and pack
// is listed, and what is asked is not what is cut.

import { describe, expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { playShow } from '../scenarios/play.ts';

const PEDALS = 16;

const show = showFrom(`
players:
  - {id: ash, name: Ashmore the Elder of Longwater}
  - {id: bo, name: Bonaventura Castellane}
  - {id: cleo, name: Cleopatra Winterbourne}
  - {id: dov, name: Dovecote Harrington}
  - {id: eli, name: Elisabetta Montgomery}
instruments:
  - {id: A1, name: A very long instrument name here, slot: "1", kind: electric-6, for: [ash], tuning: half-step down}
  - {id: B1, name: The second guitarist favourite, slot: "3", kind: electric-6, tuning: E standard}
  - {id: C1, name: The great long bass of doom, slot: "4", kind: bass-4, tuning: E standard}
packs:
${Array.from({ length: 9 }, (_, at) => `  - {id: P${at}, name: Pack of a very long name ${at}, channel: A channel that is long ${at}}`).join('\n')}
boards:
  bo:
${Array.from({ length: PEDALS }, (_, at) => `    - {id: p${at}, name: Overdrive of a very long name ${at}}`).join('\n')}
songs:
  - {id: one, title: A song with a title that goes on and on for ever, length: "4:00", hands: {ash: A1, bo: B1, cleo: C1}}
  - {id: two, title: Another song with a title that goes on and on, length: "4:00", hands: {ash: A1}}
set: [one, two]
`);

const lines = (keys: string) => {
	const { screen } = playShow(
		show,
		`-01:00 !ready\n00:00 space\n00:10 ${keys} !screen --size 80x24\n`,
	);
	return screen.split('\n');
};

describe.each([
	'x',
	'x b',
	't',
	'o',
	'f 0',
	'w',
	'w a',
	'q',
	'j',
	'm',
	'c 1',
	'f 1',
	's',
	'r',
	'a',
	'b',
	'b 1',
])('%s', (keys) => {
	test('leaves the way out in sight', () => {
		expect(lines(keys).slice(-2).join('\n')).toMatch(/ {2}esc \S|^esc \S/m);
	});
});

const KEYS = [...'123456789abcdefg'];

test.each(['o', 'f 0'])('%s lists every pedal, with what its key does', (keys) => {
	const drawn = lines(keys).join('\n');
	for (const key of KEYS.slice(0, PEDALS)) {
		expect(drawn).toMatch(new RegExp(`(?:^| )${key} O\\S* (?:shown|stuck) off`, 'm'));
	}
});

test('packs are all listed', () => {
	const drawn = lines('w a').join('\n');
	for (const key of KEYS.slice(0, 9)) expect(drawn).toMatch(new RegExp(` ${key} Pack`));
});

test('what is wrong is asked with every answer in sight', () => {
	const drawn = lines('f 1').join('\n');
	for (const answer of ['e electronics', 'j jack', 'p strap', 'enter out tonight']) {
		expect(drawn).toContain(answer);
	}
});

test('the question stands before the name', () => {
	expect(lines('c 1').join('\n')).toContain('Actual fret or tuning, then enter');
});
