// The state of an instrument in words, and what each mark for one says.

import { minutesSeconds } from '../base/duration.ts';
import { readinessOf } from '../session/readiness.ts';
import type { Session } from '../session/session.ts';

/** What each mark says; for the help. */
export const MARK_WORDS = {
	'+': 'ready',
	'~': 'recheck',
	'-': 'not ready',
	x: 'broken or faulty',
	o: 'out',
	'=': 'in hands',
} as const;

export const STAGED = 'staged';

/** Where an instrument is. */
export const WHERE_WORDS = {
	racked: 'rack',
	staged: STAGED,
	inHands: 'in hands',
	onBench: 'bench',
	out: 'out',
} as const;

/** The state in words, with the age of "ready" where there is one, which takes the same cells until it is an hour: `RECHECK  16:02 ago`. */
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
	const age = ageSeconds === null ? '' : ` ${minutesSeconds(ageSeconds).padStart(6)} ago`;
	return isReady ? `READY${age}` : isStale ? `RECHECK${age}` : 'NOT READY';
}

/** The same without how long ago it was made ready. */
export function withoutAge(words: string): string {
	return words.replace(/ +\d[\d:]* ago/, '');
}

/** The same without that it was ready once, where there is work to say instead. */
export function workAlone(words: string): string {
	return words.replace(/^RECHECK[^,]*, /, '');
}
