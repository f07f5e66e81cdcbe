// A song for which a player has nothing: when that is to be met, and what the others get with it.

import { expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { playShow } from '../scenarios/play.ts';

// After an interval of 8 min Ash and Bo both get something; Amber breaks on the rack and nothing else is Ash's.
const show = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A, name: Amber, slot: "1", kind: electric-6, for: [ash], tuning: E standard}
  - {id: B, name: Birch, slot: "2", kind: bass-4, for: [bo], tuning: E standard}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: none, bo: none}}
  - {id: two, title: Two, length: "3:00", hands: {ash: {instrument: A}, bo: {instrument: B, tuning: drop D}}}
set: [one, {interval: 8m}, two]
`);
const NIGHT = '-01:00 t 0\n00:00 space\n01:00 b 1\n03:00 space\n';

/** Whatever `NAME  in   1:45` or `0:10 late` says at the head of the player's card. */
function when(screen: string, player: string): string | undefined {
	return screen.match(new RegExp(`^${player} +(in +[\\d:]+|now|[\\d:]+ late)`, 'm'))?.[1];
}

test('in an interval it is met when the others change, not at once', () => {
	// Too late for the strings, 4:30: the interval ends at 11:00, one hand-over of 15 s before that.
	const { screen } = playShow(show, `${NIGHT}09:00 !screen\n`);
	expect(screen).toMatch(/^ASH .*NO BACKUP$/m);
	expect(when(screen, 'ASH')).toBe(when(screen, 'BO'));
	expect(when(screen, 'ASH')).toMatch(/^in +1:45$/);
});

test('once the song is on it is late from its start', () => {
	const { screen } = playShow(show, `${NIGHT}10:50 space\n11:00 !screen\n`);
	expect(when(screen, 'ASH')).toBe('0:10 late');
});

test('who is left with nothing in a song is told so first, though nothing was named for them', () => {
	// Bo is logged with the only guitar in D A D G A D, which was chosen for Ash.
	const one = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A, name: Amber, slot: "1", kind: acoustic-6, tuning: DADGAD}
  - {id: B, name: Birch, slot: "2", kind: bass-4, for: [bo], tuning: E standard}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: {needs: {kind: acoustic-6, sounds: DADGAD}}, bo: {instrument: B}}}
  - {id: two, title: Two, length: "3:00", hands: {ash: none, bo: {instrument: B}}}
set: [one, two]
`);
	const { screen, states } = playShow(
		one,
		'-01:00 t 0\n00:00 space\n01:00 x 1 b !state\n01:04 !screen\n',
	);
	expect(states[0].players.ash.holds).toBeNull();
	const [first] = screen.split('\n');
	expect(first).toMatch(/^ASH +\d:\d\d late +for 1 One/);
});
