// Solves the choosing without the clock with HiGHS, one criterion after the other, each held to its best
// for those after it.

import type { Show } from '../../../src/showfile/show.ts';
import { type ChoiceModel, type COUNTED, choiceModel } from './choice-model.ts';
import { solver } from './solver.ts';

/** Each is solved for its best, held to it for the next: sums of a thousand and one keep their order. */
const STEPS = [
	['missing', 'substituted'],
	['overGap', 'backup'],
	['handOvers', null],
	['retunings', 'preference'],
] as const;
const THOUSAND = 1000;

/** The best figures in the order of `COUNTED`; null where the time did not suffice. */
export function solveChoice(show: Show, limitSeconds = 60): readonly number[] | null {
	const { criteria, rows, binaries } = choiceModel(show);
	const held: string[] = [];
	const best: number[] = [];
	for (const [first, second] of STEPS) {
		const sum = stepSum(criteria, first, second);
		if (sum === null) {
			best.push(0, 0);
			continue;
		}
		const text = [
			'Minimize',
			` obj: ${sum}`,
			'Subject To',
			...[...rows, ...held].map((row, index) => ` r${index}: ${row}`),
			'Binary',
			` ${binaries.join(' ')}`,
			'End',
		].join('\n');
		const { Status, ObjectiveValue } = solver.solve(text, {
			time_limit: limitSeconds,
			mip_rel_gap: 0,
			mip_abs_gap: 0.5,
		});
		if (Status !== 'Optimal') return null;
		const value = Math.round(ObjectiveValue);
		if (second === null) best.push(value);
		else best.push(Math.floor(value / THOUSAND), value % THOUSAND);
		held.push(`${sum} <= ${value}`);
	}
	return best;
}

/** One sum of two, a thousand of the second worth less than one of the first; null where neither can be more than 0. */
function stepSum(
	criteria: ChoiceModel['criteria'],
	first: (typeof COUNTED)[number],
	second: (typeof COUNTED)[number] | null,
): string | null {
	const times = (sum: string, factor: number): string =>
		sum
			.split(' + ')
			.map((term) => {
				const [count, name] = term.includes(' ') ? term.split(' ') : ['1', term];
				return `${Number(count) * factor} ${name}`;
			})
			.join(' + ');
	if (second === null) return criteria[first];
	if (criteria[first] === 'nought' && criteria[second] === 'nought') return null;
	return `${times(criteria[first], THOUSAND)} + ${times(criteria[second], 1)}`;
}
