// The state of an instrument as a mark and as words: each state differs by shape, never by colour.

import type { InstrumentState } from '../../machines/instrument.ts';
import { fitWidth } from '../base/display-width.ts';
import { readiness } from '../session/readiness.ts';
import type { Show } from '../showfile/show.ts';
import { durationWords } from './duration-words.ts';
import type { SpanStyle } from './row.ts';

/** What each mark says; for the help. */
export const MARK_WORDS = {
	'+': 'ready',
	'~': 'stale: was ready too long ago',
	'-': 'not ready',
	x: 'broken or faulty',
	o: 'out',
	'=': 'in hands',
} as const;

/** Before the mark of what stands at the player's place already. */
export const STAGED_MARK = '>';

export type StateMark = keyof typeof MARK_WORDS;

/** The mark of an instrument's state at a moment of the night. */
export function stateMark(show: Show, state: InstrumentState, atMs: number): StateMark {
	if (state.context.stringsDown.length > 0 || state.context.faults.length > 0) return 'x';
	if (state.value === 'out' || state.value === 'cased') return 'o';
	if (state.value === 'inHands') return '=';
	const { isReady, isStale } = readiness(show, state, atMs);
	return isReady ? '+' : isStale ? '~' : '-';
}

/** How a mark and its words are written: what is ready and what is in hands can be passed over. */
export function markStyle(mark: StateMark): SpanStyle {
	if (mark === '+') return 'plain';
	return mark === '=' || mark === 'o' ? 'dim' : 'unready';
}

/** The state in words, with the age of "ready" where there is one, which takes the same cells however old: `STALE  16:02 ago`. */
export function stateWords(show: Show, state: InstrumentState, atMs: number): string {
	const { stringsDown, faults } = state.context;
	if (stringsDown.length > 0) {
		const named = stringsDown.map((one) => one ?? '?').join(', ');
		return `BROKEN string ${named}`;
	}
	if (faults.length > 0) return `FAULTY ${faults.join(', ')}`;
	if (state.value === 'out') return 'OUT';
	if (state.value === 'cased') return 'IN ITS CASE';
	if (state.value === 'inHands') return 'IN HANDS';
	const { isReady, isStale, ageSeconds } = readiness(show, state, atMs);
	const age =
		ageSeconds === null ? '' : `${fitWidth(durationWords(ageSeconds), 7, { align: 'right' })} ago`;
	return isReady ? `READY${age}` : isStale ? `STALE${age}` : 'NOT READY';
}
