// While only time goes by, what was chosen without the clock is kept: the plan is the one that would be made from
// nothing, or a restart would tell people something else.

import { expect, test } from 'vitest';
import { makePlan } from '../../src/plan/make-plan.ts';
import { chanceShow } from '../plan/independent/chance-show.ts';
import { seededChance } from '../plan/independent/seeded-chance.ts';
import { showOf } from '../plan/independent/show-of.ts';
import { pressedNight, START_MS } from './pressed-night.ts';

const KEYS = ['space', 'b 1 enter', 'space', 'x 2', 'd', 'f 3 enter', 'space', 'r 1', 'd', 'enter'];
const LATER_MS = [0, 1000, 7000, 50_000, 200_000];

test('seconds after each step the plan is as if nothing were kept of the one before', () => {
	for (let seed = 1; seed <= 5; seed += 1) {
		const size = { songs: 6, instruments: 5, players: 3 };
		const { night, press, pass } = pressedNight(showOf(chanceShow(seededChance(seed), size)));
		for (const keys of KEYS) {
			press(...keys.split(' '));
			press('esc');
			for (const ms of LATER_MS) {
				pass(ms);
				const kept = night.plan();
				const moment = { session: night.session(), nowMs: night.nowMs(), plannedZeroMs: START_MS };
				const anew = makePlan(moment);
				expect(kept).toEqual(anew);
			}
		}
	}
}, 60_000);
