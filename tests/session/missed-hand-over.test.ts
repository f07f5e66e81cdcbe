// A song left at once leaves its hand-overs unrecorded; where what comes after asks nothing of the players,
// nothing of it is open any more, and it is still told until something is recorded.

import { expect, test } from 'vitest';
import { playShow, type State } from '../scenarios/play.ts';
import { showFrom } from '../showfile/show-files.ts';

// Extra and Other are not on the list: nothing stands above them, so who is not named keeps what they have.
const show = showFrom(`format: rackside/1
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: A2, name: Birch, slot: "2", kind: electric-6, tuning: drop D, for: [ash]}
  - {id: B1, name: Coal, slot: "3", kind: electric-6, tuning: E standard, for: [bo]}
  - {id: B2, name: Dace, slot: "4", kind: acoustic-6, tuning: E standard, for: [bo]}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: A1, bo: B1}}
  - {id: two, title: Two, length: "3:00", hands: {ash: {instrument: A2, tuning: drop D}, bo: B1}}
  - {id: five, title: Five, length: "3:00", hands: {bo: {needs: {kind: acoustic-6, sounds: E standard}}}}
  - {id: six, title: Six, length: "3:00", hands: {ash: A1}}
  - {id: extra, title: Extra, length: "3:00"}
  - {id: other, title: Other, length: "3:00"}
set: [one, two, six, five]
`);
const begun = '-01:00 !ready\n00:00 space\n';
/** Two begun at 0:30 without its hand-over, and left for Extra at 1:00. */
const left = '00:30 right\n00:40 j "ext" enter\n01:00 right\n';
const missed = ({ warnings }: State): readonly string[] =>
	warnings
		.filter(({ code }: { code: string }) => code === 'missed-hand-over')
		.map(({ text }: { text: string }) => text);
const play = (script: string) => playShow(show, begun + script);
const after = (script: string) => play(script).states.map(missed);
const TOLD = ["Ash's hand-over of A2 for Two was not logged"];

test('a miss is told once the song is left, as long as nothing is asked of them', () => {
	expect(
		after(`00:30 right !state\n00:40 j "ext" enter\n01:00 right !state\n01:30 j "oth" enter\n02:00 space
02:10 space !state\n02:30 !state`),
	).toEqual([[], TOLD, TOLD, TOLD, TOLD]);
});

test('the screen names slot and instrument where it is watched for', () => {
	const { screen } = play(`${left}01:05 !screen`);
	expect(screen).toMatch(/Ash's hand-over of 2 Birch for Two was not logged/);
});

test.each([
	['what was missed', 'x 2'],
	['something else', 'x a -'],
	['that they still have what they had', 'x 1'],
])('it is gone once it is recorded: %s; and back with undo', (_, keys) => {
	expect(after(`${left}01:10 ${keys} !state\n01:20 u !state`)).toEqual([[], TOLD, TOLD]);
});

test('that they stay on what they have is no hand-over, and refused once it was said', () => {
	const { screen, states } = play(`${left}01:10 x 1 !state !screen x 1 !screen`);
	expect(states[0].players.ash).toMatchObject({ holds: 'A1', since: '00:00:00' });
	expect(screen).toContain('Ash keeps 1 Amber');
	expect(screen).toContain('Ash already has 1 Amber.');
});

test('what they got then is recorded as of the beginning of the song that it was missed for', () => {
	const { screen, states } = play(`${left}01:10 x !screen enter 2 !state`);
	expect(screen).toMatch(/enter since the song began/i);
	expect(states[0].players.ash).toMatchObject({ holds: 'A2', since: '00:00:30' });
	expect(missed(states[0])).toEqual([]);
});

test('while that song is still on, too; and of nobody else', () => {
	const { states, screen } = play('00:30 right\n00:50 x enter 2 !state\n00:55 !screen');
	expect(states[0].players.ash).toMatchObject({ holds: 'A2', since: '00:00:30' });
	expect(screen).toContain('Birch');
	const bo = play('00:30 right\n00:50 x enter 4 !screen !state');
	expect(bo.screen).toContain('No hand-over to Bo was missed in this song.');
	expect(bo.states[0].players.bo.holds).toBe('B1');
});

test('without enter it is in hands as of now', () => {
	const { states } = play('00:30 right\n01:10 x 2 !state');
	expect(states[0].players.ash).toMatchObject({ holds: 'A2', since: '00:01:10' });
});

test('where none was missed, enter is not for that question', () => {
	const { screen } = play('00:50 x !screen enter !screen');
	expect(screen).not.toContain('since the song began');
	expect(screen).toContain('enter is not a slot');
});

test('it is gone where the song asks for something', () => {
	expect(after(`${left}01:30 space !state\n01:45 space !state`)).toEqual([[], [], []]);
});

test('where the file leaves the choice open, something else was missed', () => {
	const bo = ["Bo's hand-over for Five was not logged"];
	const script =
		'00:20 d\n00:35 space\n00:50 d\n01:05 space\n01:20 right\n01:30 j "ext" enter\n01:40 right !state';
	expect(after(script)[0]).toEqual(bo);
});

test('nothing is missed by songs passed through in a moment, nor where it was exchanged before', () => {
	expect(after('00:30 right\n00:31 j "ext" enter right !state')[0]).toEqual([]);
	expect(after('00:30 d x 2 !state\n00:40 space\n00:50 j "ext" enter\n01:00 right !state')).toEqual(
		[[], [], []],
	);
});

test('a stop of the program changes nothing', () => {
	expect(after(`${left}01:10 !kill\n01:11 !state`)).toEqual([TOLD, TOLD]);
});
