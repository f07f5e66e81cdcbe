// Middling shows made up by chance: the choice without the clock is held against that of a general solver.

import { expect, test } from 'vitest';
import { boardOf } from '../../src/plan/board.ts';
import { chooseHands } from '../../src/plan/choose-hands.ts';
import { outlookOf } from '../../src/plan/outlook.ts';
import { readyAtZero } from '../../src/plan/plan-before-doors.ts';
import { seatingOf } from '../../src/plan/seats.ts';
import type { Show } from '../../src/showfile/show.ts';
import type { Shape } from './oracle/chance-show.ts';
import { chanceShow, evening } from './oracle/chance-show.ts';
import { solveChoice } from './oracle/solve-choice.ts';

const SHOWS = Number(process.env.PLAN_SHOWS ?? 104);

const SHAPES: readonly Shape[] = [
	evening(6, 2, 0.85),
	{ ...evening(5, 2, 0.5), own: 2, keeps: 0.15, none: 0.05, cues: 0.2, gaps: [0, 5, 15, 30] },
	{ ...evening(5, 3, 0.6), own: 1, keeps: 0.2, gaps: [0, 15, 30] },
	evening(8, 1, 0.5),
];

function chosenFor(show: Show) {
	const session = readyAtZero(show);
	const outlook = outlookOf({ session, nowMs: -3_600_000, plannedZeroMs: 0 });
	const board = boardOf(seatingOf(outlook, null));
	const { counts, bound } = chooseHands(board, { left: 10_000_000 })!;
	const [missing, overGap, , handOvers, retunings, preference] = counts;
	return {
		figures: [missing, overGap, handOvers, retunings, preference],
		isProved: counts.every((count, place) => count === bound[place]),
	};
}

test(`${SHOWS} choices without the clock are the solver's best`, () => {
	for (let seed = 0; seed < SHOWS; seed += 1) {
		const show = chanceShow(seed, SHAPES[seed % SHAPES.length]!);
		const solved = solveChoice(show);
		expect({ seed, ...chosenFor(show) }).toEqual({ seed, figures: solved, isProved: true });
	}
}, 240_000);
