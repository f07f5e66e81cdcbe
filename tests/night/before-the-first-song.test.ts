// Before the first song there is no song whose end anything in hands would have to wait for. Seconds of work are
// common practice, no source.

import { expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { pressedNight, START_MS } from './pressed-night.ts';

const show = showFrom(`
players: [{id: ash, name: Ash, key: a}, {id: bo, name: Bo, key: o}]
instruments:
  - {id: A1, slot: "1", kind: electric-6, tuning: E standard}
songs:
  - {id: one, length: "3:00", hands: {ash: {instrument: A1}, bo: none}}
  - {id: two, length: "3:00", hands: {ash: none, bo: {instrument: A1}}}
set: [one, two]
`);

test('in other hands before the first song, it can be worked on now', () => {
	const { night, press } = pressedNight(show);
	press('enter', 'j', 't', 'w', 'o', 'tab', 'enter');
	expect(night.session().players.ash?.holds).toBe('A1');
	expect(night.plan().handOvers[1]).toMatchObject({ player: 'bo', instrument: 'A1' });
	// Wiped, 15 s, and touched up, 45 s.
	const work = night.plan().work.find(({ instrument }) => instrument === 'A1');
	expect(work).toMatchObject({
		seconds: 60,
		startMs: START_MS + 7000,
		finishMs: START_MS + 67_000,
	});
});
