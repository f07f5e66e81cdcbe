// Where a place of the stage view has few cells, what has to be done and what is on is not what is cut.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

// Fourteen on the rack, so that a peg has 11 cells; Ash plays D A D G A D with a capo, then without.
const others = Array.from(
	{ length: 12 },
	(_, at) =>
		`  - {id: o${at}, name: Other, slot: "${'3456789abdef'[at]}", kind: electric-6, tuning: E standard}`,
);
const show = showFrom(`
players: [{id: ash, name: Ash, key: h}, {id: bo, name: Bo, key: n}]
instruments:
  - {id: A, name: Amber, slot: "1", kind: acoustic-6, tuning: DADGAD}
  - {id: B, name: Birch, slot: "2", kind: bass-4, tuning: E standard}
${others.join('\n')}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: {instrument: A, capo: 2}, bo: {instrument: B}}}
  - {id: two, title: Two, length: "3:00", hands: {ash: none, bo: {instrument: B}}}
  - {id: three, title: Three, length: "3:00", hands: {ash: {instrument: A, tuning: "G2 A2 D3 G3 A3 D4"}, bo: {instrument: B}}}
set: [one, two, three]
`);
const OPENED = '-02:00 t 0\n-01:30 t 1 enter\n00:00 space\n';

test('under a peg a long tuning and its capo are both there, in hands and on the rack', () => {
	const inHands = playShow(show, `${OPENED}01:00 !screen\n`).screen;
	expect(inHands).toMatch(/^1 {3}Ash +2 {3}Bo/m);
	expect(inHands).toContain('DADGADc2');
	const onRack = playShow(show, `${OPENED}03:00 space\n03:15 space\n03:20 !screen\n`).screen;
	expect(onRack).toMatch(/^1 . DADG?…c2/m);
});

test('in the list of work the capo is whole where the tuning has no room', () => {
	const { screen } = playShow(show, `${OPENED}03:00 space\n03:15 space\n03:20 !screen\n`);
	const [row] = screen.match(/^TO DO.*/m) ?? [];
	expect(row).toMatch(/1 Amber +. RETUNE.*, CAPO OFF +\d:\d\d start/);
});

test('in the rack view how long the work takes is whole or not said, and in the list who else changes is counted', () => {
	const theatre = loadShow(join(import.meta.dirname, '../rehearsals/theatre.yaml'));
	const night = '-20:00 t 0\n-00:30 enter enter\n00:00 space\n01:00 right\n01:20 b 2 enter\n';
	const rack = playShow(theatre, `${night}02:00 tab !screen\n`).screen;
	expect(rack).toMatch(/Nell +\d:\d\d TOUCH UP 1:00$/m);
	expect(rack).not.toMatch(/(TOUCH|RESTRING|RETUNE).*…$/m);
	const list = playShow(theatre, `${night}02:00 tab tab !screen\n`).screen;
	// The fourth song changes all four.
	expect(list).toMatch(/^ +4 Hollow Ground .* Wren X for 2, \+3$/m);
	expect(list).not.toMatch(/…$/m);
});
