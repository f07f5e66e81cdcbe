// A song left at once leaves its hand-overs unrecorded; where the next one lets the players keep what they
// have, nothing of it is open any more, and it is still told until something is recorded.

import { expect, test } from 'vitest';
import { playShow, type State } from '../scenarios/play.ts';
import { showFrom } from '../showfile/show-files.ts';

const show = showFrom(`format: rackside/1
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: A2, name: Birch, slot: "2", kind: electric-6, tuning: drop D, for: [ash]}
  - {id: B1, name: Coal, slot: "3", kind: electric-6, tuning: E standard, for: [bo]}
  - {id: B2, name: Dune, slot: "4", kind: acoustic-6, tuning: E standard, for: [bo]}
songs:
  - {id: one, title: One, length: "3:00", parts: {ash: A1, bo: B1}}
  - {id: two, title: Two, length: "3:00", parts: {ash: {instrument: A2, tuning: drop D}}}
  - {id: three, title: Three, length: "3:00"}
  - {id: four, title: Four, length: "3:00"}
  - {id: five, title: Five, length: "3:00", parts: {bo: {needs: {kind: acoustic-6, sounds: E standard}}}}
  - {id: six, title: Six, length: "3:00", parts: {ash: A1}}
set: [one, two, three, four, five, four, six]
`);
const begun = '-01:00 !ready\n00:00 space\n';
const missed = ({ warnings }: State): readonly string[] =>
	warnings
		.filter(({ code }: { code: string }) => code === 'missed-hand-over')
		.map(({ text }: { text: string }) => text);
const after = (script: string) => playShow(show, begun + script).states.map(missed);
const TOLD = ['Ash was to get A2 for Two, and it is not recorded'];

test('a miss is told once the song is left, as long as they keep what they have', () => {
	expect(
		after('00:30 right !state\n01:00 right !state\n02:00 space space !state\n02:30 !state'),
	).toEqual([[], TOLD, TOLD, TOLD, TOLD]);
});

test('the screen names slot and instrument where it is watched for', () => {
	const { screen } = playShow(show, `${begun}00:30 right\n01:00 right !screen`);
	expect(screen).toMatch(
		/^WATCH \+1 +Ash was to get slot 2 Birch for Two, and it is not recorded$/m,
	);
});

test.each([
	['what was missed', 'x 2'],
	['something else', 'x a -'],
	['that they still have what they had', 'x 1'],
])('it is gone once it is recorded: %s; and back with undo', (_, keys) => {
	expect(after(`00:30 right\n01:00 right\n01:10 ${keys} !state\n01:20 u !state`)).toEqual([
		[],
		TOLD,
		TOLD,
	]);
});

test('that they still have it is said so, and refused where nothing was missed', () => {
	const { screen } = playShow(
		show,
		`${begun}00:30 right\n01:00 right\n01:10 x 1 !screen x 1 !screen`,
	);
	expect(screen).toContain('Ash has Amber (slot 1) still');
	expect(screen).toContain('Ash has Amber already.');
});

test('it is gone where the song asks for something, and after the last one', () => {
	const bo = 'Bo was to get something else for Five, and it is not recorded';
	const script = '00:30 right\n01:00 right*4@6000ms !state\n01:30 right !state\n02:00 space !state';
	expect(after(script)).toEqual([[...TOLD, bo], [bo], [], []]);
});

test('nothing is missed by songs passed through in a moment, nor where it was exchanged before', () => {
	expect(after('00:30 right right !state')).toEqual([[], []]);
	expect(after('00:30 d x 1 !state\n00:40 space right !state')).toEqual([[], [], []]);
});

test('a stop of the program changes nothing', () => {
	expect(after('00:30 right\n01:00 right\n01:10 !kill\n01:11 !state')).toEqual([TOLD, TOLD]);
});
