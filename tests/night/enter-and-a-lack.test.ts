// Who has nothing to play in the next song is said to lack it, and enter gives them nothing that a later cue of
// that song is to hand them.

import { expect, test } from 'vitest';
import { comingHandOvers } from '../../src/screen/coming.ts';
import { showFrom } from '../plan/show-from.ts';
import { pressedNight } from './pressed-night.ts';

test('what a cue is to hand is not handed between songs to who lacks something first', () => {
	const show = showFrom(`
players: [{id: ash, name: Ash, key: a}]
instruments:
  - {id: A1, slot: "1", kind: electric-6, tuning: E standard, instead: []}
  - {id: B1, slot: "2", kind: bass-4, tuning: E standard, instead: []}
songs:
  - id: one
    length: "4:00"
    hands: {ash: {instrument: A1}}
    cues: [{at: bridge, near: "2:00", hand: {ash: {instrument: B1}}}]
set: [one]
`);
	const { night, press } = pressedNight(show);
	press('f', '1', 'enter');
	expect(comingHandOvers(night.screen())).toMatchObject([{ kind: 'missing', player: 'ash' }]);
	press('enter', 'enter');
	expect(night.session().players.ash?.holds).toBeNull();
	press('space', 'space');
	expect(night.session().players.ash?.holds).toBe('B1');
});

test('before the first song too, who lacks something keeps what is in hands until it is given to somebody else', () => {
	const show = showFrom(`
players: [{id: ash, name: Ash, key: a}, {id: bo, name: Bo, key: o}]
instruments:
  - {id: A1, slot: "1", kind: electric-6, tuning: E standard, instead: []}
  - {id: B1, slot: "2", kind: bass-4, tuning: E standard, instead: []}
songs:
  - id: one
    length: "4:00"
    hands: {ash: {instrument: A1}, bo: none}
    cues: [{at: bridge, near: "2:00", hand: {ash: {instrument: B1}}}]
  - {id: two, length: "4:00", hands: {ash: none, bo: {instrument: A1}}}
set: [one, two]
`);
	const { night, press } = pressedNight(show);
	press('f', '2', 'enter', 'enter');
	expect(night.session().players.ash?.holds).toBe('A1');
	const changes = night
		.plan()
		.handOvers.map(({ section, player, from, instrument }) =>
			[section.song, player, from, instrument].join(' '),
		);
	expect(changes).toEqual(['two ash A1 ', 'two bo  A1']);
});
