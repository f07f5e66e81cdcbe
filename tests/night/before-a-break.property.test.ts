// What could stand in, as it is told just before a string goes and just after: the same order and the same
// costs, or what was looked at beforehand is worth nothing when it counts.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomShow } from '../plan/random-night.ts';
import type { State } from '../scenarios/play.ts';
import { pressedNight } from './pressed-night.ts';

const numRuns = Number(process.env.BREAK_RUNS ?? 60);

/** Through so many songs and cues, some work done on the way, and then so many seconds into what is on. */
const way = fc.array(fc.constantFrom('space', 'space', 'space', 't', 'enter', 'd'), {
	minLength: 1,
	maxLength: 14,
});

test('at any moment of a song, for whatever is in hands', () => {
	let compared = 0;
	fc.assert(
		fc.property(randomShow, way, fc.boolean(), (show, keys, isReady) => {
			const { night, press } = pressedNight(show);
			if (isReady) night.submit({ do: 'make-all-ready' }, 'script');
			for (const key of keys) press(key);
			press('esc');
			const before = night.state() as State;
			if (before.phase !== 'song') return;
			for (const { id } of show.players) {
				const held = before.players[id].holds;
				if (held === null) continue;
				const at = before.instruments[held];
				if (at.stringsDown.length > 0) continue;
				// At the same moment: nothing but the break lies between the two.
				night.press('b');
				const asked = night.state() as State;
				if (asked.incidents.length === before.incidents.length) night.press(at.slot);
				const after = night.state() as State;
				expect(after.incidents.at(-1)).toMatchObject({ player: id, instrument: held });
				expect(after.standIns[id]).toEqual(before.standIns[id]);
				compared += before.standIns[id].length;
				return;
			}
		}),
		{ numRuns },
	);
	expect(compared).toBeGreaterThan(numRuns / 4);
}, 60_000);
