// The state of an instrument as a mark: each state differs by shape, never by colour.

import { readinessOf } from '../session/readiness.ts';
import type { Session } from '../session/session.ts';
import type { MARK_WORDS } from '../words/instrument-state.ts';
import type { SpanStyle } from './row.ts';

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
