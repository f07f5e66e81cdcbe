// A piece of work in words, from all of it to the least, and whether its time has come.

import { workToDo } from '../plan/backups/break-work.ts';
import type { IdleWork, Work } from '../plan/plan.ts';
import { capoAct } from '../words/capo-words.ts';
import { capoLabel, JOB_WORDS, jobWords } from '../words/stage.ts';
import { shortTuning, tuningNames } from '../words/tuning-names.ts';
import type { ScreenState } from './screen-state.ts';

/** All that is to be done, in the order in which to do it, what is to be done to a break's first backup among it. */
export function workNow(state: ScreenState): readonly Work[] {
	return workToDo({ ...state, standInsFor: (player) => state.standIns[player] ?? [] });
}

/** Whether something waits for it. */
export function isWanted(work: Work | IdleWork): work is Work {
	return 'wantedMs' in work;
}

/** Its time has come, and it can be done: what is still in somebody's hands cannot be begun, however late. */
export function isToBegin({ nowMs }: ScreenState, work: Work): boolean {
	return (work.beginByMs <= nowMs || work.slackSeconds < 0) && work.fromMs <= nowMs;
}

/** The work itself, `RETUNE drop D, CAPO ON 2`, and the same in fewer letters. */
export function workWords(state: ScreenState, work: Work | IdleWork): readonly string[] {
	const { show } = state.session;
	const names = [shortTuning(show, work.to), tuningNames(show, work.to).at(-1) ?? work.to.name];
	const jobs = names.map((name) => jobWords(work.job, name));
	const capo = capoToMove(state, work);
	if (capo === null) return jobs;
	const acts = [capoAct(capo), ...(capo > 0 ? [capoLabel(capo)] : [])];
	if (work.job === 'capo') return withTouchUp(state, work, acts);
	return [
		...jobs.flatMap((job) => acts.map((act) => `${job}, ${act}`)),
		// The card and the rack name the tuning, too.
		`${JOB_WORDS[work.job]}, ${capoAct(capo)}`,
	];
}

/** The same under a peg, where what it is in stands above: of a touch-up for a capo the capo, of a retune what to, of all else the job. */
export function peggedWork(state: ScreenState, work: Work | IdleWork): readonly string[] {
	const { show } = state.session;
	const job = JOB_WORDS[work.job];
	const capo = capoToMove(state, work);
	const act = capo === null ? [] : [capoAct(capo)];
	if (work.job === 'capo') return withTouchUp(state, work, act);
	if (work.job === 'touch-up' || work.job === 'restring') return [[job, ...act].join(', '), ...act];
	const to = tuningNames(show, work.to).map((name) => jobWords(work.job, name));
	return [...workWords(state, work), ...to, job];
}

function withTouchUp(state: ScreenState, work: Work | IdleWork, acts: readonly string[]) {
	const [first] = acts;
	if (first === undefined || !isTouchedUp(state, work)) return acts;
	return [`${JOB_WORDS['touch-up']}, ${first}`, ...acts];
}

/** A capo that is put on asks for a touch-up, unless its time is the capo's alone. */
export function isTouchedUp(
	{ session }: ScreenState,
	{ job, instrument, seconds }: Work | IdleWork,
): boolean {
	const times = session.show.instruments.find(({ id }) => id === instrument)?.times;
	return job === 'capo' && times !== undefined && seconds > times.capo;
}

/** Where the capo is to go with it; null where it stays. */
function capoToMove({ session }: ScreenState, work: Work | IdleWork): number | null {
	if (!isWanted(work) || work.isEarly) return null;
	// Work that is the capo's own moves it, though it may be where it is to be until work before that is done.
	if (work.job === 'capo') return work.capo;
	const on = session.instruments[work.instrument]?.context.capo ?? 0;
	return work.capo === on ? null : work.capo;
}
