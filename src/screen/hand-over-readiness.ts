// Whether an instrument is ready for one very hand-over, as a mark and in words: ready as it stands is not
// yet ready for what is asked.

import type { PlannedHandOver, StandIn, Work } from '../plan/plan.ts';
import { samePitches } from '../plan/same-pitches.ts';
import { durationWords } from './duration-words.ts';
import { type StateMark, stateMark, stateWords } from './instrument-words.ts';
import type { ScreenState } from './screen-state.ts';

export type HandOverReadiness = {
	/** `+` only when nothing is left to do; null where nothing is handed. */
	readonly mark: StateMark | null;
	readonly words: string;
	/** What is left to do for it. */
	readonly due: readonly Work[];
};

/** For a planned hand-over, with the work that is left for it. */
export function handOverReadiness(state: ScreenState, planned: PlannedHandOver): HandOverReadiness {
	const { session, nowMs } = state;
	const { instrument } = planned;
	const due = workFor(state, planned);
	if (instrument === null) return { mark: null, words: 'hands empty', due };
	const held = session.instruments[instrument];
	if (held === undefined) return { mark: null, words: '', due };
	const mark = stateMark(session.show, held, nowMs);
	const words = stateWords(session.show, held, nowMs);
	if (due.length === 0) return { mark: mark === '=' ? '+' : mark, words, due };
	const left = due.reduce((sum, one) => sum + one.seconds, 0);
	const { tuning, capo } = held.context;
	const isAsAsked = due.every((one) => one.capo === capo && samePitches(one.to, tuning));
	const honest = mark !== '+' ? words : isAsAsked ? 'STALE BY THEN' : 'NOT YET';
	const jobs = due.map(({ job }) => job).join(' + ');
	return { mark: notYet(mark), words: `${honest}, ${jobs} ${durationWords(left)}`, due };
}

/** For a stand-in, with how long until it is in hands. */
export function standInReadiness(
	{ session, nowMs }: ScreenState,
	{ instrument, tuning, capo, readyInSeconds }: StandIn,
): HandOverReadiness {
	const held = session.instruments[instrument];
	const asItIs = held === undefined ? null : stateMark(session.show, held, nowMs);
	const isAsAsked =
		held?.context.capo === capo && held.context.tuning.notes.join(' ') === tuning.notes.join(' ');
	const mark = isAsAsked || asItIs === null ? asItIs : notYet(asItIs);
	const ready = mark === '+' ? 'READY' : 'NOT READY';
	return { mark, words: `${ready}, in hands in ${durationWords(readyInSeconds)}`, due: [] };
}

function notYet(mark: StateMark): StateMark {
	return mark === '+' ? '-' : mark;
}

function workFor(
	{ plan }: ScreenState,
	{ instrument, section, player }: PlannedHandOver,
): readonly Work[] {
	return plan.work.filter(
		(one) =>
			one.instrument === instrument &&
			one.player === player &&
			one.section.item === section.item &&
			one.section.point === section.point,
	);
}
