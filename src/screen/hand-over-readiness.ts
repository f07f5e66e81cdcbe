// Whether an instrument is ready for one very hand-over, as a mark and in words: ready as it stands is not
// yet ready for what is asked.

import { minutesSeconds } from '../base/duration.ts';
import type { PlannedHandOver, StandIn, Work } from '../plan/plan.ts';
import { workFor } from '../plan/schedule/work-for.ts';
import { holderOf } from '../session/find.ts';
import { playerName } from '../showfile/shown-names.ts';
import { capoAct } from '../words/capo-words.ts';
import { stateWords } from '../words/instrument-state.ts';
import { backupReadiness, HANDS_EMPTY, hasItLabel, JOB_WORDS } from '../words/stage.ts';
import { type StateMark, stateMark } from './instrument-marks.ts';
import type { ScreenState } from './screen-state.ts';
import { isTouchedUp } from './work-words.ts';

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
	const due = workFor(state.plan, planned);
	if (instrument === null) return { mark: null, words: HANDS_EMPTY, due };
	const held = session.instruments[instrument];
	if (held === undefined) return { mark: null, words: '', due };
	const mark = stateMark(session, instrument, nowMs);
	const words = whereWords(state, planned, held.value) ?? stateWords(session, instrument, nowMs);
	if (due.length === 0) return { mark: mark === '=' ? '+' : mark, words, due };
	const left = due.reduce((sum, one) => sum + one.seconds, 0);
	const jobs = `${due.map((one) => jobLabel(state, one)).join(' + ')} ${minutesSeconds(left)}`;
	const isTouchUp = due.every(({ job }) => job === 'touch-up');
	const all = said(mark) ? [words, jobs] : [jobs];
	// What has to be done to it is needed sooner than that it was ready once.
	const inTurn = isTouchUp || mark !== '~' ? all : all.toReversed();
	return { mark: notYet(mark), words: inTurn.join(', '), due };

	/** What the work does not say itself. */
	function said(now: StateMark): boolean {
		return now === '~' || now === '=' || now === 'o';
	}
}

/** Who else has it in hands: it is to be fetched there. */
function whereWords(
	{ session }: ScreenState,
	{ instrument, player }: PlannedHandOver,
	place: string,
): string | null {
	const holder = instrument === null || place !== 'inHands' ? null : holderOf(session, instrument);
	if (holder === null || holder === player) return null;
	return hasItLabel(playerName(session.show, holder));
}

/** The work as a label: `RETUNE`, `TOUCH UP, CAPO ON 2,`, since a number follows. */
function jobLabel(state: ScreenState, work: Work): string {
	if (work.job !== 'capo') return JOB_WORDS[work.job];
	const touchUp = isTouchedUp(state, work) ? `${JOB_WORDS['touch-up']}, ` : '';
	return `${touchUp}${capoAct(work.capo)},`;
}

/** For a backup, with how long until it is in hands. */
export function standInReadiness(
	{ session, nowMs }: ScreenState,
	{ instrument, tuning, capo, readyInSeconds }: StandIn,
): HandOverReadiness {
	const held = session.instruments[instrument];
	const asItIs = held === undefined ? null : stateMark(session, instrument, nowMs);
	const isAsAsked =
		held?.context.capo === capo && held.context.tuning.notes.join(' ') === tuning.notes.join(' ');
	const mark = isAsAsked || asItIs === null ? asItIs : notYet(asItIs);
	return { mark, words: backupReadiness(mark === '+', readyInSeconds), due: [] };
}

function notYet(mark: StateMark): StateMark {
	return mark === '+' ? '-' : mark;
}
