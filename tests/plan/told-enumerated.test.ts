// Small shows in which people have been told something by chance: of all that is equally late, the plan
// changes least of it.

import { expect, test } from 'vitest';
import type { Entry } from '../../src/journal/entry.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { momentBefore, readyAtZero } from '../../src/plan/timed-choice/before-doors.ts';
import { type PlanCore, planCore } from '../../src/plan/timed-choice/plan-core.ts';
import type { Session } from '../../src/session/session.ts';
import { slotName, toldAt } from '../../src/session/told.ts';
import type { Show } from '../../src/showfile/show.ts';
import { stateBeforeDoors } from './independent/before-doors.ts';
import { bestLive } from './independent/best-live.ts';
import { compareCosts, LIVE_CRITERIA, PLAN_CRITERIA } from './independent/cost.ts';
import { type LiveState, type Played, slotKey } from './independent/live-state.ts';
import { type PlannedSlot, search } from './independent/search.ts';
import { smallShow } from './independent/small-show.ts';
import { pitchesOf } from './independent/sounding.ts';
import { withEntries } from './night-at.ts';
import { chance } from './oracle/chance.ts';

const NAMES = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B'];
const SHOWS = Number(process.env.PLAN_SHOWS ?? 200);
const BUDGET = 1_000_000;
/** The share that is proved at least. */
const LEAST_PROVED = 0.8;

/** Half of what a plan leaves open, of the best by the criteria the other way round. */
function told(state: LiveState, seed: number): readonly PlannedSlot[] {
	const by = chance(seed);
	const [plan] = search(state, { criteria: PLAN_CRITERIA.toReversed(), mostPlans: 1 }).plans;
	return plan!.slots.filter(({ section, player }) => {
		const { demand, isAsAbove } = state.sections[section]!.cells[player]!;
		return demand.kind === 'needs' && !isAsAbove && by.is(0.5);
	});
}

/** The night before its doors in which people were told so. */
function withTold(show: Show, sections: Plan['sections'], slots: readonly PlannedSlot[]): Session {
	const hands = slots.flatMap(({ played }) => (played === null ? [] : [toldOf(played)]));
	let next = 0;
	const entry: Entry = {
		k: 'plan-told',
		at: 0,
		hands,
		slots: Object.fromEntries(
			slots.map(({ section, player, played }) => {
				const name = slotName({ ...sections[section]!, player });
				if (played === null) return [name, null];
				next += 1;
				return [name, next - 1];
			}),
		),
	};
	return withEntries(readyAtZero(show), entry);
}

function toldOf({ instrument, open, capo }: Played) {
	const notes = open.map((midi) => `${NAMES[midi % 12]}${Math.floor(midi / 12) - 1}`);
	return { instrument, tuning: { name: 'as told', notes }, capo };
}

function changedIn({ plan }: PlanCore, session: Session): number {
	return plan.slots.filter(({ section, player, instrument, tuning, capo }) => {
		const asked = toldAt(session, { ...section, player });
		if (asked === undefined || asked === null || instrument === null) {
			return asked !== undefined && (asked === null) !== (instrument === null);
		}
		const isSame =
			asked.instrument === instrument &&
			asked.capo === capo &&
			pitchesOf(asked.tuning).join() === pitchesOf(tuning).join();
		return !isSame;
	}).length;
}

test('no choice that is equally late changes less of what was told', () => {
	let decided = 0;
	let proved = 0;
	for (let seed = 0; seed < SHOWS; seed += 1) {
		const show = smallShow(seed);
		const state = stateBeforeDoors(show);
		const slots = told(state, seed);
		if (slots.length === 0) {
			proved += 1;
			continue;
		}
		const first = planCore(momentBefore(readyAtZero(show)), { budget: 1 });
		const session = withTold(show, first.plan.sections, slots);
		const core = planCore(momentBefore(session), { budget: BUDGET });
		const { cost, isProved } = core.plan;
		if (!isProved) continue;
		proved += 1;
		const given = slots.map(({ section, player, played }) => [
			slotKey(state.sections[section]!.key, player),
			played,
		]);
		const best = bestLive({ ...state, told: Object.fromEntries(given) }, 1);
		const figures = { ...cost, changed: changedIn(core, session) };
		expect({ seed, figures: LIVE_CRITERIA.map((name) => figures[name]) }).toEqual({
			seed,
			figures: LIVE_CRITERIA.map((name) => best.cost[name]),
		});
		const other = search(state, { criteria: PLAN_CRITERIA, mostPlans: 1 });
		// Something else costs more because of what was told.
		if (compareCosts(other.cost, best.cost, PLAN_CRITERIA) < 0) decided += 1;
	}
	expect(proved).toBeGreaterThanOrEqual(LEAST_PROVED * SHOWS);
	expect(decided).toBeGreaterThanOrEqual(20);
}, 240_000);
