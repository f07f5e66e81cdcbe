// Enter pressed when a song has just begun: its own hand-overs are recorded with its start, so what enter
// asks for is the next song's: the first press names it, the second one records it.

import { expect, test } from 'vitest';
import { playShow, type State } from '../scenarios/play.ts';
import { showFrom } from '../showfile/show-files.ts';

const show = showFrom(`format: rackside/1
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: A2, name: Birch, slot: "2", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: B1, name: Coal, slot: "3", kind: electric-6, tuning: E standard, for: [bo]}
  - {id: B2, name: Dace, slot: "4", kind: electric-6, tuning: E standard, for: [bo]}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: A1, bo: B1}, cues: [{at: V2, hand: {bo: B2}}]}
  - {id: two, title: Two, length: "3:00", hands: {ash: A2}}
  - {id: three, title: Three, length: "3:00", hands: {ash: A1, bo: B1}}
set: [one, two, three]
`);
const play = (script: string) => playShow(show, `-01:00 !ready\n00:00 space\n${script}`);
const hands = ({ players }: State) => [players.ash.holds, players.bo.holds];
const words = (screen: string): string => screen.replace(/\s+/g, ' ');

test('the hand-overs of the next song are named by the first press and recorded by the second', () => {
	const { screen, states } = play(
		'00:01 space space space\n00:10 enter !screen !state\n00:12 enter !state\n00:20 u',
	);
	expect(words(screen)).toContain('For Three (next): enter again for all 2, or the slot of one');
	expect(words(screen)).toContain('Ash: 1 Amber');
	expect(states.map(hands)).toEqual([
		['A2', 'B2'],
		['A1', 'B1'],
		['A2', 'B2'],
	]);
	expect(states[1].players.ash.since).toBe('00:00:12');
});

test('recorded, they are named with the song that they are for', () => {
	const { screen } = play('00:01 space enter enter !screen');
	expect(words(screen)).toContain('Logged: Ash has 2 Birch for Two (next). u undo, x correct.');
});

test('a second press within 300 ms counts once, and one after the question is gone asks again', () => {
	expect(hands(play('00:01 space\n00:05 enter*2@250ms !state').states[0])).toEqual(['A1', 'B2']);
	const { states } = play('00:01 space\n00:05 enter\n00:11 enter !state\n00:13 enter !state');
	expect(states.slice(0, 2).map(hands)).toEqual([
		['A1', 'B2'],
		['A2', 'B2'],
	]);
});

test('one of several is recorded by its slot', () => {
	const { states } = play('00:01 space space space\n00:10 enter 3 !state');
	expect(hands(states[0])).toEqual(['A2', 'B1']);
});

test('the hand-over of a cue, and one between songs, is recorded at once', () => {
	expect(hands(play('00:01 enter !state').states[0])).toEqual(['A1', 'B2']);
	expect(hands(play('00:01 space d enter !state').states[0])).toEqual(['A2', 'B2']);
});

test('what the song on asks for when it comes again after another is no hand-over for now', () => {
	const again = showFrom(`format: rackside/1
players: [{id: ash, name: Ash}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard}
  - {id: A2, name: Birch, slot: "2", kind: electric-6, tuning: E standard}
songs:
  - {id: one, title: One, length: "3:00"}
  - {id: two, title: Two, hands: {ash: A1}, cues: [{at: V2, hand: {ash: A2}}]}
set: [one, two]
`);
	const { screen, states } = playShow(
		again,
		'-01:00 !ready\n00:00 space\n03:00 d\n03:15 space\n03:30 space\n03:40 j "one" enter\n03:50 enter\n03:52 !screen',
	);
	expect(states[0].players.ash.holds).toBe('A2');
	// Two has no length and counts as three minutes, like One: it ends at 6:15, the second time at 12:45.
	expect(screen).toContain('0:37 of ?   2:23 left');
});

test('a second press between songs does not reach into the middle of the next one', () => {
	const inMiddle = showFrom(`format: rackside/1
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: A2, name: Birch, slot: "2", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: B2, name: Dace, slot: "4", kind: electric-6, tuning: E standard, for: [bo]}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: A1}}
  - {id: two, title: Two, length: "3:00", hands: {ash: A2}, cues: [{at: V2, hand: {bo: B2}}]}
set: [one, two]
`);
	const { states, screen } = playShow(
		inMiddle,
		'-01:00 !ready\n00:00 space\n03:00 d\n03:05 enter !state\n03:08 enter !state !screen\n03:15 space\n04:00 enter !state',
	);
	expect(states.slice(0, 3).map(hands)).toEqual([
		['A2', null],
		['A2', null],
		['A2', 'B2'],
	]);
	expect(words(screen)).toContain('No hand-over before the next song');
});

test('that of a cue known to be far off is named first, as that of a later song is', () => {
	const atCue = showFrom(`format: rackside/1
players: [{id: bo, name: Bo}]
instruments:
  - {id: B1, name: Coal, slot: "3", kind: electric-6, tuning: E standard}
  - {id: B2, name: Dace, slot: "4", kind: electric-6, tuning: E standard}
songs:
  - {id: one, title: One, length: "5:00", hands: {bo: B1}, cues: [{at: V2, near: "3:00", hand: {bo: B2}}]}
set: [one]
`);
	const playOne = (script: string) => playShow(atCue, `-01:00 !ready\n00:00 space\n${script}`);
	const held = ({ players }: State) => players.bo.holds;
	const early = playOne('00:30 enter !screen !state\n00:32 enter !screen !state');
	expect(words(early.screen)).toContain('For V2 (later): enter again if it is in hands now');
	expect(words(early.screen)).toContain('Logged: Bo has 4 Dace for V2 (later). u undo, x correct.');
	expect(early.states.slice(0, 2).map(held)).toEqual(['B1', 'B2']);
	expect(early.states[1].players.bo.since).toBe('00:00:32');
	// Less than a minute before it the press is for it.
	expect(playOne('02:10 enter !state').states.slice(0, 1).map(held)).toEqual(['B2']);
});
