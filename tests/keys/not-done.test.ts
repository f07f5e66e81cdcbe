// What goes into hands with its work never marked is logged as planned, and said to be so.

import { expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { playShow } from '../scenarios/play.ts';

const show = showFrom(`
players: [{id: ash, name: Ash}]
instruments:
  - {id: A, name: Amber, slot: "1", kind: electric-6, tuning: E standard}
  - {id: B, name: Birch, slot: "2", kind: electric-6, tuning: E standard}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: {instrument: A}}}
  - {id: two, title: Two, length: "3:00", hands: {ash: {instrument: B, tuning: drop D, capo: 2}}}
set: [one, two]
`);
const BEFORE = '-01:00 t 0\n-00:30 enter\n00:00 space\n';
const SAID = /Logged as planned, but 2 Birch NOT RETUNED(, CAPO NOT MOVED)?\. c corrects\./;

test.each(['space', 'enter'])('by %s between songs', (key) => {
	const { screen } = playShow(show, `${BEFORE}03:00 space\n03:10 ${key} !screen\n`);
	expect(screen.replaceAll(/\s+/g, ' ')).toMatch(SAID);
});

test('not where it was marked', () => {
	const { screen } = playShow(show, `${BEFORE}01:00 t 2 enter\n03:00 space\n03:10 space !screen\n`);
	expect(screen).not.toContain('Logged as planned');
});

test('not by the end of the song before, which hands nothing over', () => {
	const { screen } = playShow(show, `${BEFORE}03:00 space !screen\n`);
	expect(screen).not.toContain('Logged as planned');
});

test('what has a string down is said not to have been handed, as the log has it', () => {
	// Amber breaks on the rack as the song begins that wants it; Birch is capoed for nobody.
	const two = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A, name: Amber, slot: "1", kind: electric-6, for: [ash], tuning: E standard}
  - {id: B, name: Birch, slot: "2", kind: bass-4, for: [bo], tuning: E standard}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: none, bo: none}}
  - {id: two, title: Two, length: "3:00", hands: {ash: {instrument: A}, bo: {instrument: B, tuning: drop D}}}
set: [one, {interval: 8m}, two]
`);
	const { screen, states } = playShow(
		two,
		'-01:00 t 0\n00:00 space\n01:00 b 1\n03:00 space\n04:00 space !state !screen\n',
	);
	const { players } = states[0]!;
	expect([players.ash.holds, players.bo.holds]).toEqual([null, 'B']);
	expect(screen.replaceAll(/\s+/g, ' ')).toContain(
		'Ash gets nothing: 1 Amber has a string down. Logged as planned, but 2 Birch NOT RETUNED. c corrects.',
	);
});
