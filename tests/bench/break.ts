// From the key that says that a string broke to the ways out of it with what each costs later, on the
// club show: every instrument in hands of every song, broken a minute in; and the same asked for just before.

import { join } from 'node:path';
import { playOnCost, standInsWithCosts } from '../../src/plan/backups/stand-in-costs.ts';
import { makePlan } from '../../src/plan/make-plan.ts';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { readyAtZero } from '../../src/plan/timed-choice/before-doors.ts';
import { playedThrough } from '../../src/plan/what-if/played-through.ts';
import { sessionAfter } from '../../src/plan/what-if/what-if.ts';
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
				const moment = { nowMs, plannedZeroMs: 0, player: id };
				return broken
					? [{ before: { ...moment, session }, after: { ...moment, session: broken } }]
					: [];
			}),
	);
	const figures = (times: readonly number[]) =>
		`${median(times).toFixed(1)} ms, worst ${Math.max(...times).toFixed(1)} ms (target ${TARGET_MS} ms at most)`;
	const timed = (work: () => void) => median(Array.from({ length: rounds }, () => workMs(work)));
	const after = breaks.map(({ after: moment }) =>
		timed(() => {
			const asked = { ...moment, plan: makePlan(moment) };
			standInsWithCosts(asked);
			playOnCost(asked);
		}),
	);
	const before = breaks.map(({ before: moment }) =>
		timed(() => standInsWithCosts({ ...moment, plan: makePlan(moment) })),
	);
	return [
		`break  ${breaks.length} breaks of the club show: the plan and every way out ${figures(after)}`,
		`break  asked for just before: the plan and every way out ${figures(before)}`,
	];
}
