// Enter pressed when a song has just begun: its own hand-overs are recorded with its start, so what enter
// records is the next song's, and that is said.

import { expect, test } from 'vitest';
import { playShow } from '../scenarios/play.ts';
import { showFrom } from '../showfile/show-files.ts';

const show = showFrom(`format: rackside/1
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: A2, name: Birch, slot: "2", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: B1, name: Coal, slot: "3", kind: electric-6, tuning: E standard, for: [bo]}
  - {id: B2, name: Dune, slot: "4", kind: electric-6, tuning: E standard, for: [bo]}
songs:
  - {id: one, title: One, length: "3:00", parts: {ash: A1, bo: B1}, cues: [{at: V2, hand: {bo: B2}}]}
  - {id: two, title: Two, length: "3:00", parts: {ash: A2}}
  - {id: three, title: Three, length: "3:00", parts: {ash: A1, bo: B1}}
set: [one, two, three]
`);
const play = (script: string) => playShow(show, `-01:00 !ready\n00:00 space\n${script}`);
const TOLD = 'the next song; u takes it back, x corrects it.';

test('the hand-over of the next song is named as that, and undo takes it back', () => {
	const { screen, states } = play('00:01 space space space enter enter !screen !state\n00:10 u');
	expect(screen.replace(/\s+/g, ' ')).toContain(`Ash and Bo have theirs now for Three, ${TOLD}`);
	expect(states.map(({ players }) => [players.ash.holds, players.bo.holds])).toEqual([
		['A1', 'B1'],
		['A2', 'B2'],
	]);
});

test('one alone is named with what they have', () => {
	const { screen } = play('00:01 space enter !screen');
	expect(screen.replace(/\s+/g, ' ')).toContain(`Ash has slot 2 Birch now for Two, ${TOLD}`);
});

test('nothing is said of the hand-over of a cue, nor between songs', () => {
	expect(play('00:01 enter !screen').screen).not.toContain('the next song;');
	expect(play('00:01 d enter !screen').screen).not.toContain('the next song;');
});

test('what the song on asks for when it comes again after another is no hand-over for now', () => {
	const again = showFrom(`format: rackside/1
players: [{id: ash, name: Ash}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard}
  - {id: A2, name: Birch, slot: "2", kind: electric-6, tuning: E standard}
songs:
  - {id: one, title: One, length: "3:00"}
  - {id: two, title: Two, parts: {ash: A1}, cues: [{at: V2, hand: {ash: A2}}]}
set: [one, two]
`);
	const { screen, states } = playShow(
		again,
		'-01:00 !ready\n00:00 space\n03:00 d\n03:15 space\n03:30 space\n03:40 j "one" enter\n03:50 enter\n03:52 !screen',
	);
	expect(states[0].players.ash.holds).toBe('A2');
	// Two has no length and counts as three minutes, like One: it ends at 6:15, the second time at 12:45.
	expect(screen).toContain('0:37 of ? left   2:23');
});
