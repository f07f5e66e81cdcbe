// The fold: replaying a long night, and what one step costs to decide and apply.

import { join } from 'node:path';
import { makePlan } from '../../src/plan/make-plan.ts';
import { applyAll } from '../../src/session/apply.ts';
import { decide } from '../../src/session/decide.ts';
import { openSession } from '../../src/session/open-session.ts';
import { extend, openTimeline } from '../../src/session/timeline.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { longNight } from './long-night.ts';
import { median, workMs } from './rounds.ts';

const ENTRIES = 10_000;

export async function benchReplay(rounds: number): Promise<readonly string[]> {
	const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));
	const records = longNight(show, ENTRIES);
	const entries = records.reduce((sum, { e }) => sum + e.length, 0);
	const replay = () => {
		records.reduce(extend, openTimeline(openSession(show)));
	};
	replay();
	const whole = median(Array.from({ length: rounds }, () => workMs(replay)));
	const opened = openSession(show);
	const step = median(
		Array.from({ length: 2000 }, () =>
			workMs(() => {
				const decision = decide(opened, { do: 'step', handOvers: [] }, 1_000_000);
				if (decision.ok) applyAll(opened, decision.entries);
			}),
		),
	);
	const plan = median(
		Array.from({ length: 200 }, () =>
			workMs(() => {
				makePlan({ session: opened, nowMs: 0, plannedZeroMs: 0 });
			}),
		),
	);
	return [
		`${`replay of ${entries} entries, no checkpoint`.padEnd(44)} ${whole.toFixed(0).padStart(6)} ms  ${((whole * 1000) / entries).toFixed(1).padStart(6)} us an entry  (targets <= 500 ms, <= 50 us)`,
		`${'one step decided and applied'.padEnd(44)} ${(step * 1000).toFixed(0).padStart(6)} us`,
		`${'one plan of the 18-song show'.padEnd(44)} ${(plan * 1000).toFixed(0).padStart(6)} us`,
	];
}
