// What is called sure work has to be done by whatever is chosen, on nights with strings down, intervals
// and exchanges too, which no enumeration covers.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boardAfter, boardOf } from '../../src/plan/board.ts';
import { choicesOf } from '../../src/plan/choices.ts';
import { chooseHands } from '../../src/plan/choose-hands.ts';
import { gearFigures } from '../../src/plan/gear-figures.ts';
import { outlookOf } from '../../src/plan/outlook.ts';
import type { Said } from '../../src/plan/possible-hands.ts';
import { seatingOf } from '../../src/plan/seats.ts';
import { sureLateness, sureWork } from '../../src/plan/sure-work.ts';
import { weighed } from '../../src/plan/weighed.ts';
import { randomNight } from './random-night.ts';

const numRuns = Number(process.env.PLAN_RUNS ?? 150);
/** A hundredth of a millisecond: what sums of fractions may differ by. */
const SAME_MS = 0.01;

test('every choice makes the sure work of all boards that it is possible on, or more', () => {
	let made = 0;
	fc.assert(
		fc.property(randomNight, fc.array(fc.nat(), { maxLength: 12 }), (night, chances) => {
			const outlook = outlookOf({ ...night, plannedZeroMs: 0 });
			const seating = seatingOf(outlook, null);
			const figures = gearFigures(outlook, seating);
			const asked = { outlook, figures };
			const boards = [boardOf(seating)];
			const narrow = (said: Said): void => {
				const board = boardAfter(boards.at(-1)!, said);
				if (board !== null) boards.push(board);
			};
			for (const chance of chances) {
				const seat = chance % seating.seats.length;
				const section = Math.floor(chance / 7) % Math.max(1, seating.sectionCount);
				const hands = [Math.floor(chance / 91) % (seating.seats[seat]?.size ?? 1)];
				narrow({ seat, section, hands, isIt: chance % 3 === 0 });
			}
			const chosen = chooseHands(boards.at(-1)!, { left: 100_000 });
			if (chosen === null) return;
			chosen.hands.forEach((mine, seat) => {
				for (const [section, hand] of mine.entries()) {
					narrow({ seat, section, hands: [hand], isIt: true });
				}
			});
			const choices = choicesOf(outlook, seating, chosen.hands);
			const { work, cost } = weighed(outlook, choices);
			for (const board of boards) {
				for (const sure of sureWork(asked, board).pieces) {
					const { player } = seating.seats[sure.seat]!;
					const piece = work.find(
						(one) => one.player === player && one.section === outlook.sections[sure.section],
					);
					expect(piece?.seconds).toBeGreaterThanOrEqual(sure.seconds);
					expect(piece?.fromMs).toBeGreaterThanOrEqual(sure.releaseMs);
					expect(piece?.wantedMs).toBeLessThanOrEqual(sure.dueMs);
					made += 1;
				}
				const enoughMs = Number.POSITIVE_INFINITY;
				const leastMs = sureLateness(asked, board, enoughMs);
				expect(leastMs).toBeLessThanOrEqual(cost.lateness * 1000 + SAME_MS);
			}
		}),
		{ numRuns },
	);
	expect(made).toBeGreaterThan(numRuns);
}, 120_000);
