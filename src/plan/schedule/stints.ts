// What a stint does to an instrument: it is in hands in a tuning, then used and to be wiped, and back on the rack
// only once it has been exchanged.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { NightMs } from '../../journal/entry.ts';
import type { OpenWithCapo } from '../demand/same-pitches.ts';
import type { Section } from '../plan.ts';

/** What was given at the moment at which another is taken is on the rack this much later: common practice, no source. */
export const BACK_MS = 15_000;
const MS_AN_HOUR = 3_600_000;

/**
 * When what is taken from hands before this section, not at its start, is on the rack: so long after the song
 * before; at any time before the night's first.
 *
 * @example
 * backAtOnceMs({ ...section, previousEndMs: 465000 }) // => 480000
 */
export function backAtOnceMs({ previousEndMs }: Section): NightMs {
	return previousEndMs === null ? Number.NEGATIVE_INFINITY : previousEndMs + BACK_MS;
}

/**
 * In hands in this tuning and with this capo; restrung, where a string was down.
 *
 * @example
 * handedAhead(states.A1, { tuning: dropD, capo: 2 }, 0).context.capo // => 2
 */
export function handedAhead(
	state: InstrumentState,
	hand: OpenWithCapo,
	atMs: NightMs,
): InstrumentState {
	const isRestrung = state.context.stringsDown.length > 0;
	return {
		value: 'inHands',
		context: {
			...state.context,
			tuning: hand.tuning,
			capo: hand.capo,
			readyAtMs: null,
			isToWipe: true,
			stringsDown: [],
			stringHours: isRestrung ? 0 : state.context.stringHours,
			inHandsSinceMs: atMs,
		},
	};
}

/**
 * Back on the rack, used, its strings so many hours older.
 *
 * @example
 * releasedAhead(handedAhead(states.A1, { tuning: dropD, capo: 0 }, 0), 60000).context.isToWipe // => true
 */
export function releasedAhead(state: InstrumentState, atMs: NightMs): InstrumentState {
	const { stringHours, inHandsSinceMs } = state.context;
	const hours = inHandsSinceMs === null ? 0 : Math.max(0, atMs - inHandsSinceMs) / MS_AN_HOUR;
	return {
		value: 'racked',
		context: {
			...state.context,
			readyAtMs: null,
			isToWipe: true,
			stringHours: stringHours === null ? null : stringHours + hours,
			inHandsSinceMs: null,
			backAtMs: atMs,
		},
	};
}
