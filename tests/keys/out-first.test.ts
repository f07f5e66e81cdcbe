// Work for a later song on what goes out first: neither under its peg, nor recorded by marking it ready.

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
  - {id: two, title: Two, length: "3:00", hands: {ash: {instrument: B}}}
  - {id: three, title: Three, length: "3:00", hands: {ash: {instrument: A, capo: 2}}}
set: [one, two, three]
`);

test('before the show', () => {
	const { states, screen } = playShow(
		show,
		'-05:00 t 0\n-04:00 !screen\n-03:00 t 1 !state\n00:00 space\n03:00 space\n03:20 space !state\n',
	);
	expect(screen).toMatch(/^1 \+ E std/m);
	expect(screen).not.toMatch(/^ {2}CAPO ON 2/m);
	expect(states[0].instruments.A).toMatchObject({ ready: true, capo: 0 });
	// Back on the rack, it is due.
	expect(states[1].todo[0]).toMatchObject({ instrument: 'A', capo: 2 });
});
