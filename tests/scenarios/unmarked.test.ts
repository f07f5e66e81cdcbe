// What is logged with a hand-over though nobody marked it stands under WATCH until anything else is recorded, however
// long that takes and whatever is looked at meanwhile.

import { expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { playShow, type State } from './play.ts';

const show = showFrom(`
players: [{id: ash, name: Ash}]
instruments:
  - {id: A, name: Larch, slot: "3", kind: acoustic-6, tuning: E standard}
  - {id: B, name: Rowan, slot: "5", kind: acoustic-6, tuning: E standard}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: {instrument: A}}}
  - {id: two, title: Two, length: "3:00", hands: {ash: {instrument: B, tuning: drop D, capo: 2}}}
set: [one, {song: two, gap: 60s}]
`);
const said = 'was logged in drop D with capo 2, which nobody marked';
const warned = ({ warnings }: State) =>
	warnings.flatMap((one: State) => (one.code === 'unmarked' ? [one.text] : []));
const play = (script: string) =>
	playShow(show, `-01:00 t 0\n00:00 space\n03:00 d\n04:00 space\n${script}`);

test('it outlasts keys that record nothing, and goes with the first that does', () => {
	const { states, screen } = play(
		'04:01 !state\n04:30 tab tab esc\n05:00 !screen !state\n05:10 i !state\n',
	);
	expect(warned(states[0])).toEqual([`B ${said}`]);
	expect(screen).toMatch(new RegExp(`^WATCH.* 5 Rowan ${said}`, 'm'));
	expect(warned(states[1])).toEqual([`B ${said}`]);
	expect(warned(states[2])).toEqual([]);
});

test('it is the same after a kill, and comes again where what came after is undone', () => {
	const { states } = play('04:10 !kill\n04:11 !state\n04:20 i\n04:25 u !state\n');
	expect(warned(states[0])).toEqual([`B ${said}`]);
	expect(warned(states[1])).toEqual([`B ${said}`]);
});

test('what was marked is not doubted', () => {
	const { states } = playShow(
		show,
		'-01:00 t 0\n00:00 space\n02:00 t 5\n03:00 d\n04:00 space\n04:01 !state\n',
	);
	expect(states[0].players.ash.holds).toBe('B');
	expect(warned(states[0])).toEqual([]);
});
