// Two players' instruments mixed up before a song: the card says what is wrong and what puts it right, and once that is
// done nothing is left of it. The key names are the contract's.

import { expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { playShow } from '../scenarios/play.ts';

// Ash has a mandolin and Bo a guitar, on which a second one would have to be retuned to stand in.
const show = showFrom(`
players: [{id: ash, name: Ash, key: a}, {id: bo, name: Bo, key: o}]
instruments:
  - {id: M, name: Wren, slot: "1", kind: mandolin-8, for: [ash], tuning: GDAE}
  - {id: G, name: Rowan, slot: "5", kind: acoustic-6, tuning: E standard}
  - {id: S, name: Sedge, slot: "6", kind: acoustic-6, tuning: DADGAD}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: {instrument: M}, bo: {instrument: G}}}
  - {id: two, title: Two, length: "3:00"}
set: [one, two]
`);
const MIXED_UP = '-01:00 t 0\n-00:40 enter enter\n-00:15 x a 5\n';

test('what is wrong in hands is said before what stands in for it, with the keys that put it right', () => {
	const { screen } = playShow(show, `${MIXED_UP}-00:13 !screen\n`);
	expect(screen).toMatch(/^ASH .*5 Rowan for 1 One +HAND 1 Wren, then x a 1$/m);
	expect(screen).toMatch(/^BO .*6 Sedge for 1 One .*RETUNE/m);
	expect(screen.replaceAll(/\s+/g, ' ')).toMatch(/backup for 5 Rowan \(Ash .*has it\)/);
	expect(screen).toMatch(/^WRONG .*Ash has 5 Rowan; One wants 1 Wren/m);
});

test('done, it is said no more, and what was taken from the other is to be handed back', () => {
	const { screen } = playShow(show, `${MIXED_UP}-00:12 x a 1\n-00:09 !screen\n`);
	expect(screen).not.toContain('HAND 1 Wren');
	expect(screen).toMatch(/^BO .*5 Rowan for 1 One/m);
});

test('enter and the start of the song record nothing for them', () => {
	const { states } = playShow(show, `${MIXED_UP}00:00 space !state\n`);
	expect(states[0].players.ash).toMatchObject({ holds: 'G', planned: 'M' });
});

test('hands left empty are said to be, and who has what is wanted', () => {
	const { screen } = playShow(
		show,
		'-01:00 t 0\n-00:40 enter enter\n-00:20 x o -\n-00:18 x a 5\n-00:16 !screen\n',
	);
	expect(screen).toMatch(/^BO .*for 1 One +HAND 5 Rowan, then x o 5$/m);
	expect(screen).toMatch(/ Ash has 5 Rowan$/m);
});

test('once the song is on it is late from then, until the last seconds of the song', () => {
	const { screen } = playShow(show, `${MIXED_UP}00:00 space\n00:10 !screen\n`);
	expect(screen).toMatch(/^ASH +0:10 late 5 Rowan for 1 One +HAND 1 Wren, then x a 1$/m);
	expect(screen).toMatch(/^WRONG .*Ash has 5 Rowan; One wants 1 Wren/m);
	const last = playShow(show, `${MIXED_UP}00:00 space\n02:45 !screen\n`).screen;
	expect(last).not.toContain('HAND 1 Wren');
	expect(last).toMatch(/^WRONG .*Ash has 5 Rowan; One wants 1 Wren/m);
});

test('what another rightly plays on is not to be handed', () => {
	// Birch stands in for Ash's broken Amber, and Bo, whose it is, was given a bass for the meantime.
	const shared = showFrom(`
players: [{id: ash, name: Ash, key: a}, {id: bo, name: Bo, key: o}]
instruments:
  - {id: A, name: Amber, slot: "1", kind: electric-6, for: [ash], tuning: E standard}
  - {id: B, name: Birch, slot: "2", kind: electric-6, tuning: E standard}
  - {id: C, name: Coal, slot: "3", kind: bass-4, for: [bo], tuning: E standard}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: {instrument: A}, bo: {instrument: B}}}
set: [one]
`);
	const { screen } = playShow(
		shared,
		'-01:00 t 0\n-00:50 f 1 enter\n-00:40 x a 2\n-00:30 x o 3\n-00:20 !screen\n',
	);
	expect(screen).toMatch(/^WRONG .*Bo has 3 Coal; One wants 2 Birch/m);
	expect(screen).not.toContain('HAND 2 Birch');
});

test('what is out or broken is not to be handed: said is what it is to sound in', () => {
	const { screen } = playShow(show, '-01:00 t 0\n-00:40 f 1 enter\n-00:30 x a 5\n-00:20 !screen\n');
	expect(screen).not.toContain('HAND 1 Wren');
	expect(screen).toMatch(/wants GDAE/);
	expect(screen).toMatch(/1 Wren OUT/);
});

test('what is kept wrong for the next song, too, is said once, and for that one when it is next', () => {
	const { screen, states } = playShow(
		show,
		`${MIXED_UP}00:00 space\n01:00 x a 5\n01:02 !screen !state\n02:00 d\n02:05 !state\n`,
	);
	const ofAsh = ({ warnings }: (typeof states)[number]) =>
		warnings.filter(
			(one: { code: string; player?: string }) =>
				one.code === 'wrong-tuning' && one.player === 'ash',
		);
	expect(screen.match(/Ash has 5 Rowan; \w+ wants 1 Wren/g)).toEqual(
		Array(2).fill('Ash has 5 Rowan; One wants 1 Wren'),
	);
	expect(ofAsh(states[0])).toMatchObject([{ song: 'one' }]);
	expect(ofAsh(states[1])).toMatchObject([{ song: 'two' }]);
});
