// From the key that says that a string broke to the ways out of it with what each costs later, on the
// club show: every instrument in hands of every song, broken a minute in.

import { join } from 'node:path';
import { makePlan } from '../../src/plan/make-plan.ts';
import { planBeforeDoors, readyAtZero } from '../../src/plan/plan-before-doors.ts';
import { playedThrough } from '../../src/plan/played-through.ts';
import { playOnCost, standInsWithCosts } from '../../src/plan/stand-in-costs.ts';
import { sessionAfter } from '../../src/plan/what-if.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { median, workMs } from './rounds.ts';

const INTO_MS = 60_000;
const TARGET_MS = 20;

export async function benchBreak(rounds: number): Promise<readonly string[]> {
	const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));
	const breaks = playedThrough(readyAtZero(show), planBeforeDoors(show)).flatMap(
		({ section, session }) =>
			show.players.flatMap(({ id }) => {
				const held = session.players[id]?.holds;
				const nowMs = section.startMs + INTO_MS;
				const broken =
					held && sessionAfter({ session, nowMs }, [{ do: 'report-break', instrument: held }]);
				return broken ? [{ session: broken, nowMs, plannedZeroMs: 0, player: id }] : [];
			}),
	);
	const times = breaks.map((moment) =>
		median(
			Array.from({ length: rounds }, () =>
				workMs(() => {
					const asked = { ...moment, plan: makePlan(moment) };
					standInsWithCosts(asked);
					playOnCost(asked);
				}),
			),
		),
	);
	const worst = Math.max(...times);
	return [
		`break  ${breaks.length} breaks of the club show: the plan and every way out ${median(times).toFixed(1)} ms, worst ${worst.toFixed(1)} ms (target ${TARGET_MS} ms at most)`,
	];
}
