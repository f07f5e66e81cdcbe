// In whatever show: every moment that is drawn has an answer, and its keys are it.

import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawMoments } from '../../src/drill/draw-moments.ts';
import { openTrial } from '../../src/drill/trial-night.ts';
import { keyOfAction } from '../../src/keys/key-choices.ts';
import { randomShow } from '../plan/random-night.ts';
import { handClock } from './example-shows.ts';
import { pressesOf } from './presses-of.ts';

/** Of so many runs one is done here: each plays a show through. */
const RUNS_EACH = 20;
const RUNS = Math.ceil(Number(process.env.PROPERTY_RUNS ?? 160) / RUNS_EACH);

test('every moment of a random show is answered by its keys', () => {
	let drawn = 0;
	fc.assert(
		fc.property(randomShow, fc.integer({ min: 0, max: 999_999 }), (show, seed) => {
			const { handMs, pass } = handClock();
			const keyOf = (id: string) => keyOfAction(id, {});
			for (const moment of drawMoments({ show, handMs }, { seed, count: 8, keyOf })) {
				const { night, clock } = openTrial({ show, handMs }, moment.strike);
				clock.run(1);
				pass(1000);
				expect(moment.isAnswered(night.session())).toBe(false);
				for (const key of pressesOf(moment.keys)) {
					pass(400);
					night.press(key);
				}
				drawn += 1;
				expect([moment.words, moment.keys, moment.isAnswered(night.session())]).toEqual([
					moment.words,
					moment.keys,
					true,
				]);
			}
		}),
		{ numRuns: RUNS },
	);
	expect(drawn).toBeGreaterThan(0);
});
