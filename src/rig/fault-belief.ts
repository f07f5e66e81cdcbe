// How sure one can be of each cause after some answers: Bayes' rule over single causes.

import type { Suspect, Symptom } from './fault-suspects.ts';
import type { FaultTest } from './fault-tests.ts';

/** With the test done it is right, or it is the same as before. */
export type Answer = 'sound' | 'same';

export type Answered = { readonly test: FaultTest; readonly answer: Answer };

/**
 * Bayes' rule: chances after a finding, given how likely each cause makes it. Null where no cause allows it.
 *
 * @example
 * posterior([0.5, 0.2, 0.2, 0.1], [0.1, 0.1, 1, 1])?.map((one) => one.toFixed(4)) // => ['0.1351', '0.0541', '0.5405', '0.2703']
 * posterior([1, 0], [0, 1]) // => null
 */
export function posterior(
	priors: readonly number[],
	likelihoods: readonly number[],
): readonly number[] | null {
	const joint = priors.map((prior, at) => prior * (likelihoods[at] ?? 0));
	const sum = joint.reduce((total, one) => total + one, 0);
	return sum > 0 ? joint.map((one) => one / sum) : null;
}

/** A fault that comes and goes is quiet by itself about this often while somebody tests: common practice, no source. */
const QUIET: Readonly<Partial<Record<Symptom, number>>> = {
	crackle: 0.2,
	'cuts-out': 0.3,
	wireless: 0.3,
	feedback: 0.1,
};
/** How often an answer is wrong, where no single cause explains all of them: common practice, no source. */
const WRONG_ANSWER = 0.05;

export type Belief = {
	/** One chance a suspect, in the order of the path; they add up to 1. */
	readonly chances: readonly number[];
	/** No single cause explains all answers: one of them is wrong, or there are two faults. */
	readonly isContradictory: boolean;
};

/**
 * What to believe of each suspect after the answers.
 *
 * @example
 * beliefOf({ suspects: [], symptom: 'silent', answers: [] }) // => { chances: [], isContradictory: false }
 */
export function beliefOf({
	suspects,
	symptom,
	answers,
}: {
	readonly suspects: readonly Suspect[];
	readonly symptom: Symptom;
	readonly answers: readonly Answered[];
}): Belief {
	const priors = suspects.map(({ prior }) => prior);
	const after = (wrong: number) =>
		posterior(
			priors,
			suspects.map(({ id }) =>
				answers.reduce(
					(product, one) => product * likelihood(one, id, { quiet: QUIET[symptom] ?? 0, wrong }),
					1,
				),
			),
		);
	const chances = suspects.length === 0 ? [] : after(0);
	if (chances !== null) return { chances, isContradictory: false };
	return { chances: after(WRONG_ANSWER) ?? priors, isContradictory: true };
}

/** How likely a cause makes an answer. */
function likelihood(
	{ test, answer }: Answered,
	cause: string,
	{ quiet, wrong }: { readonly quiet: number; readonly wrong: number },
): number {
	const sound = test.clears.includes(cause) ? 1 : quiet;
	const isSoundHeard = sound * (1 - wrong) + (1 - sound) * wrong;
	return answer === 'sound' ? isSoundHeard : 1 - isSoundHeard;
}
