// Shows in which half of the slots name no instrument: what is said of a choice that could not be proved
// the best with what may be looked at has to hold all the same.

import { describe, expect, test } from 'vitest';
import { boardOf } from '../../src/plan/board.ts';
import { choicesOf } from '../../src/plan/choices.ts';
import { chooseHands } from '../../src/plan/choose-hands.ts';
import { compared } from '../../src/plan/criteria.ts';
import { outlookOf } from '../../src/plan/outlook.ts';
import { readyAtZero } from '../../src/plan/plan-before-doors.ts';
import { seatingOf } from '../../src/plan/seats.ts';
import { weighed } from '../../src/plan/weighed.ts';
import type { Show } from '../../src/showfile/show.ts';
import { chanceShow, evening } from './oracle/chance-show.ts';
import { solveChoice } from './oracle/solve-choice.ts';

/** Too little to prove any of these; four times as much is enough for some. */
const BUDGET = 15_000;

function chosenFor(show: Show, budget: number) {
	const session = readyAtZero(show);
	const outlook = outlookOf({ session, nowMs: -3_600_000, plannedZeroMs: 0 });
	const seating = seatingOf(outlook, null);
	const chosen = chooseHands(boardOf(seating), { left: budget })!;
	const choices = choicesOf(outlook, seating, chosen.hands);
	return { chosen, choices, cost: weighed(outlook, choices).cost };
}

describe('forty songs, three players', () => {
	const shows = [0, 1, 2, 3].map((seed) => chanceShow(seed, evening(40, 3, 0.5)));

	test('what is counted is what the choice comes to, and nothing is in two hands', () => {
		for (const show of shows) {
			const { chosen, choices, cost } = chosenFor(show, BUDGET);
			const [missing, overGap, , handOvers, retunings, preference] = chosen.counts;
			expect(cost).toMatchObject({ missing, overGap, handOvers, retunings, preference });
			for (const { section } of choices) {
				const held = choices.flatMap((one) =>
					one.section === section && one.after !== null ? [one.after.instrument] : [],
				);
				expect(new Set(held).size).toBe(held.length);
			}
		}
	});

	test('looked at further, it gets no worse, nor does the bound get lower', () => {
		for (const show of shows) {
			const short = chosenFor(show, BUDGET).chosen;
			const long = chosenFor(show, 4 * BUDGET).chosen;
			expect(compared(short.bound, short.counts)).toBeLessThan(0);
			expect(compared(long.counts, short.counts)).toBeLessThanOrEqual(0);
			expect(compared(long.bound, short.bound)).toBeGreaterThanOrEqual(0);
		}
	});

	// Found by the solver HiGHS on the model of the same shows, in 2 to 70 s each.
	test.each([
		[0, [0, 0, 70, 11, 287]],
		[1, [0, 0, 80, 13, 177]],
		[2, [0, 0, 82, 24, 292]],
		[3, [0, 0, 77, 20, 216]],
		[8, [0, 0, 83, 17, 116]],
		[19, [0, 0, 78, 6, 281]],
		[22, [0, 0, 74, 10, 315]],
	])(
		"with what a plan before the doors may look at, show %i is proved to come to the solver's best",
		(seed, best) => {
			const { chosen, cost } = chosenFor(chanceShow(seed, evening(40, 3, 0.5)), 800_000);
			const { missing, overGap, handOvers, retunings, preference } = cost;
			expect([missing, overGap, handOvers, retunings, preference]).toEqual(best);
			expect(chosen.bound).toEqual(chosen.counts);
		},
	);
}, 60_000);

test("the solver's best lies between the bound and the choice, however little is looked at", () => {
	for (let seed = 0; seed < 6; seed += 1) {
		const show = chanceShow(seed, evening(10, 3, 0.5));
		const [missing, overGap, handOvers, retunings, preference] = solveChoice(show)!;
		const best = [missing, overGap, 0, handOvers, retunings, preference] as number[];
		for (const budget of [5000, 50_000]) {
			const { counts, bound } = chosenFor(show, budget).chosen;
			expect(compared(bound.slice(0, -1), best)).toBeLessThanOrEqual(0);
			expect(compared(best, counts.slice(0, -1))).toBeLessThanOrEqual(0);
		}
	}
}, 60_000);
