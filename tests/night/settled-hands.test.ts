// Hands that are left alone in the song that is on: what they hold is nobody else's, and what was handed for the
// next song is not handed again for this one.

import { expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { pressedNight } from './pressed-night.ts';

const PLAYERS = `
players:
  - {id: ash, name: Ash, key: a}
  - {id: bo, name: Bo, key: o}
`;

test('what was swapped into hands that the song wants empty is not to be had for anybody else', () => {
	const show = showFrom(`${PLAYERS}
instruments:
  - {id: A1, slot: "1", kind: electric-6, tuning: E standard}
  - {id: A2, slot: "2", kind: electric-6, tuning: E standard}
songs:
  - {id: s1, length: "4:00", hands: {ash: {instrument: A1}, bo: none}}
set: [s1]
`);
	const { night, press } = pressedNight(show);
	press('space', 'x', 'o', '2', 'f', '1', 'enter');
	expect(night.session().players.bo?.holds).toBe('A2');
	expect(night.plan().cost.missing).toBe(1);
	expect(night.plan().handOvers).toEqual([]);
});

test('what was handed for the next song stays, though it could be brought to sound like this one for somebody else', () => {
	const show = showFrom(`${PLAYERS}
instruments:
  - {id: A1, slot: "1", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: A2, slot: "2", kind: electric-6, tuning: E standard}
  - {id: B1, slot: "3", kind: electric-6, tuning: half-step down, for: [ash]}
songs:
  - {id: s1, length: "4:00", hands: {ash: {instrument: A1}, bo: {needs: {kind: electric-6, sounds: E standard}}}}
  - {id: s2, length: "4:00", hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
set: [s1, {song: s2, gap: 30s}]
`);
	const { night, press } = pressedNight(show);
	press('space', 'enter', 'enter');
	expect(night.session().players.bo?.holds).toBe('B1');
	expect(night.plan().handOvers).toEqual([]);
});

test('what is merely left in hands goes to whom the next song names it, late work and all', () => {
	const show = showFrom(`
players:
  - {id: ash, name: Ash, key: a}
  - {id: bo, name: Bo, key: o}
  - {id: cleo, name: Cleo, key: k}
instruments:
  - {id: A1, slot: "1", kind: electric-6, tuning: E standard, instead: []}
  - {id: A2, slot: "2", kind: electric-6, tuning: E standard, instead: []}
  - {id: B1, slot: "4", kind: bass-4, tuning: E standard}
  - {id: C1, slot: "3", kind: bass-4, tuning: E standard}
songs:
  - {id: s1, length: "4:00", hands: {ash: {instrument: A2}, bo: {instrument: B1}, cleo: none}}
  - id: s2
    length: "4:00"
    hands: {ash: {instrument: A1}, bo: {instrument: A2, tuning: drop D}}
    cues: [{at: solo, hand: {cleo: {instrument: C1}}}]
set: [s1, s2]
`);
	const { night, press } = pressedNight(show);
	press('space', 'f', '1', 'enter');
	expect(night.plan().handOvers.map(({ player, instrument }) => [player, instrument])).toEqual([
		['ash', null],
		['bo', 'A2'],
		['cleo', 'C1'],
	]);
});

test('what is named for somebody who stays on what sounds the same is free for others in the song that is on', () => {
	const show = showFrom(`${PLAYERS}
instruments:
  - {id: A1, slot: "1", kind: electric-6, tuning: E standard}
  - {id: A2, slot: "2", kind: electric-6, tuning: E standard}
songs:
  - {id: s1, length: "4:00", hands: {ash: {instrument: A2}, bo: none}}
  - {id: s2, length: "4:00", hands: {ash: {instrument: A1}, bo: {needs: {kind: electric-6, sounds: E standard}}}}
set: [s1, s2]
`);
	const { night, press } = pressedNight(show);
	press('space', 'right');
	expect(night.session().players.ash?.holds).toBe('A2');
	expect(night.plan().cost.missing).toBe(0);
	expect(night.plan().handOvers.map(({ player, instrument }) => [player, instrument])).toEqual([
		['bo', 'A1'],
	]);
});
