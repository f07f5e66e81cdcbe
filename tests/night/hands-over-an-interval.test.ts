// An interval takes all from hands: the first thing that each player gets after it is no hand-over that counts,
// and nobody stays over it on what they have.

import { expect, test } from 'vitest';
import { comingHandOvers } from '../../src/screen/coming.ts';
import { showFrom } from '../plan/show-from.ts';
import { pressedNight } from './pressed-night.ts';

const PLAYERS = `
players: [{id: ash, name: Ash, key: a}, {id: bo, name: Bo, key: o}]
instruments:
  - {id: A1, slot: "1", kind: electric-6, tuning: E standard}
  - {id: B1, slot: "2", kind: electric-6, tuning: half-step down}
`;

const show = showFrom(`${PLAYERS}
songs:
  - {id: one, length: "3:00", hands: {ash: {instrument: A1}, bo: none}}
  - {id: two, length: "3:00", hands: {ash: none, bo: {instrument: A1}}}
  - {id: three, length: "3:00", hands: {ash: {instrument: B1}}}
set: [one, {interval: "10:00"}, two, three]
`);

test('a song after it may be on before a player gets their first, and that still does not count', () => {
	const { night, press } = pressedNight(show);
	press('space', 'd');
	expect(night.session().phase.value).toBe('interval');
	expect(night.plan().cost.handOvers).toBe(0);
	press('space');
	expect(night.session().players).toMatchObject({ ash: { holds: null }, bo: { holds: 'A1' } });
	expect(night.plan().handOvers).toMatchObject([{ player: 'ash', instrument: 'B1' }]);
	expect(night.plan().cost.handOvers).toBe(0);
});

test('nobody is said to stay over it on what they have', () => {
	const { night, press } = pressedNight(
		showFrom(`${PLAYERS}
songs:
  - {id: one, length: "3:00", hands: {ash: {instrument: A1}}}
  - {id: two, length: "3:00", hands: {ash: {instrument: B1}}}
set: [one, {interval: "10:00"}, two]
`),
	);
	press('space', 'x', 'a', '1');
	const [row] = comingHandOvers(night.screen());
	expect(row).toMatchObject({ kind: 'hand-over', player: 'ash', instrument: 'B1' });
	press('d', 'space');
	expect(night.session().players.ash?.holds).toBe('B1');
});

test('what was in other hands before it, as a correction says later, was nobody’s first after it', () => {
	const { night, press } = pressedNight(
		showFrom(`${PLAYERS}
songs:
  - {id: one, length: "3:00", hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
  - {id: two, length: "3:00", hands: {ash: none, bo: none}}
  - {id: three, length: "3:00", hands: {ash: {instrument: B1}, bo: {instrument: A1}}}
set: [one, {interval: "10:00"}, two, three]
`),
	);
	press('space', 'right', 'x', 'o', '1');
	expect(night.session().players).toMatchObject({ ash: { holds: null }, bo: { holds: 'A1' } });
	expect(night.plan().handOvers).toMatchObject([{ player: 'ash', instrument: 'B1' }]);
	expect(night.plan().cost.handOvers).toBe(0);
});

test('right says that it skips one, and only then', () => {
	const { night, press } = pressedNight(show);
	press('space', 'right');
	expect(night.screen().message).toBe(
		'two is on, skipping the interval: nothing comes back to the rack. u undo.',
	);
	press('right');
	expect(night.screen().message).toBeNull();
	press('u', 'u', 'd', 'right');
	expect(night.session().phase.value).toBe('song');
	expect(night.screen().message).toBeNull();
});
