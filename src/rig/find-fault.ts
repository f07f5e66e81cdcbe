// One step of finding a fault: what to believe after the answers so far, what to try next, when to stop.

import type { Show } from '../showfile/show.ts';
import { type Answer, type Answered, beliefOf } from './fault-belief.ts';
import { nextToCause, nextToSound } from './fault-search.ts';
import { type FaultCase, type Suspect, suspectsOf } from './fault-suspects.ts';
import { type FaultTest, faultTests } from './fault-tests.ts';

/** From this chance on a cause counts as found: common practice, no source. */
const SURE = 0.95;

export type FaultStep = {
	/** From the strings to the desk, each with its chance now. */
	readonly causes: readonly { readonly suspect: Suspect; readonly chance: number }[];
	/** Null: nothing that can be tried tells more. */
	readonly next: FaultTest | null;
	/** Until there is sound, or until the cause is known; 0 with nothing to try. */
	readonly expectedSeconds: number;
	/** Null while none is sure enough. */
	readonly found: Suspect | null;
	readonly isContradictory: boolean;
	readonly tests: readonly FaultTest[];
};

/** `sound`: the shortest way to sound, while a song is on; `cause`: the least time to the cause, afterwards. */
export type FaultAim = 'sound' | 'cause';

/**
 * What to believe and to try after these answers; an answer to a test that the path does not have is passed over.
 *
 * @example
 * faultStep(CORDS, { player: 'bo', instrument: 'B1', symptom: 'silent' }, { aim: 'cause', answers: [{ test: 'swap-lead', answer: 'sound' }] }).found.id // => 'lead'
 */
export function faultStep(
	show: Pick<Show, 'rigs' | 'boards' | 'instruments'>,
	about: FaultCase,
	{
		aim,
		answers,
		aside = [],
	}: {
		readonly aim: FaultAim;
		/** Ids of tests that cannot be done now. */
		readonly aside?: readonly string[];
		readonly answers: readonly { readonly test: string; readonly answer: Answer }[];
	},
): FaultStep {
	const suspects = suspectsOf(show, about);
	const tests = faultTests(suspects);
	const answered = answers.flatMap(({ test, answer }): Answered[] => {
		const known = tests.find(({ id }) => id === test);
		return known === undefined ? [] : [{ test: known, answer }];
	});
	const belief = beliefOf({ suspects, symptom: about.symptom, answers: answered });
	const chanceAt = (at: number) => belief.chances[at] ?? 0;
	const found = suspects.find((_, at) => chanceAt(at) >= SURE) ?? null;
	const open = tests.filter(
		({ id }) => !aside.includes(id) && !answers.some(({ test }) => test === id),
	);
	const search = {
		suspects: suspects.map(({ id }, at) => ({ id, chance: chanceAt(at) })),
		tests: open,
	};
	const next = found !== null ? null : aim === 'sound' ? nextToSound(search) : nextToCause(search);
	return {
		causes: suspects.map((suspect, at) => ({ suspect, chance: chanceAt(at) })),
		next: next?.test ?? null,
		expectedSeconds: next?.expectedSeconds ?? 0,
		found,
		isContradictory: belief.isContradictory,
		tests,
	};
}
