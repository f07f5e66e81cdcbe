// The state of an instrument as a mark and as words: each state differs by shape, never by colour.

import { fitWidth } from '../base/display-width.ts';
import { readinessOf } from '../session/readiness.ts';
import type { Session } from '../session/session.ts';
import { durationWords } from './duration-words.ts';
import type { SpanStyle } from './row.ts';

/** What each mark says; for the help. */
export const MARK_WORDS = {
	'+': 'ready',
	'~': 'recheck: was ready too long ago',
	'-': 'not ready',
	x: 'broken or faulty',
	o: 'out',
	'=': 'in hands',
} as const;

/** Before the mark of what stands at the player's place already. */
export const STAGED_MARK = '>';

export type StateMark = keyof typeof MARK_WORDS;

/** The mark of an instrument's state at a moment of the night; one that the session does not have is out. */
export function stateMark(session: Session, instrument: string, atMs: number): StateMark {
	const state = session.instruments[instrument];
	if (state === undefined) return 'o';
	if (state.context.stringsDown.length > 0 || state.context.faults.length > 0) return 'x';
	if (state.value === 'out') return 'o';
	if (state.value === 'inHands') return '=';
	const { isReady, isStale } = readinessOf(session, instrument, atMs);
	return isReady ? '+' : isStale ? '~' : '-';
}

/** How a mark and its words are written: what is ready and what is in hands can be passed over. */
export function markStyle(mark: StateMark): SpanStyle {
	if (mark === '+') return 'plain';
	return mark === '=' || mark === 'o' ? 'dim' : 'unready';
}

/** The state in words, with the age of "ready" where there is one, which takes the same cells however old: `RECHECK  16:02 ago`. */
export function stateWords(session: Session, instrument: string, atMs: number): string {
	const state = session.instruments[instrument];
	if (state === undefined) return 'OUT';
	const { stringsDown, faults } = state.context;
	if (stringsDown.length > 0) {
		const named = stringsDown.map((one) => one ?? '?').join(', ');
		return `BROKEN string ${named}`;
	}
	if (faults.length > 0) return `FAULTY ${faults.join(', ')}`;
	if (state.value === 'out') return 'OUT';
	if (state.value === 'inHands') return 'IN HANDS';
	const { isReady, isStale, ageSeconds } = readinessOf(session, instrument, atMs);
	const age =
		ageSeconds === null ? '' : `${fitWidth(durationWords(ageSeconds), 7, { align: 'right' })} ago`;
	return isReady ? `READY${age}` : isStale ? `RECHECK${age}` : 'NOT READY';
}
