// Whether an instrument is ready, and how old that is. Asked with a time given, so that nothing
// depends on a timer that must not be missed.

import type { InstrumentState } from '../../machines/instrument.ts';
import type { Show } from '../showfile/show.ts';

export type Readiness = {
	/** Ready and fresh, on the rack or at the player's place. */
	readonly isReady: boolean;
	/** Was made ready, but too long ago. */
	readonly isStale: boolean;
	/** Seconds since it was made ready; null when it was not, or is in hands. */
	readonly ageSeconds: number | null;
};

const NOT_READY: Readiness = { isReady: false, isStale: false, ageSeconds: null };

/** Hours in hands below which strings count as new: common practice, no source. */
const NEW_STRINGS_HOURS = 1;

/** How long "ready" lasts on this instrument, in seconds. Strings of unknown age count as played in. */
export function staleAfterSeconds(show: Show, state: InstrumentState): number {
	return staleWithStrings(show, state.context.stringHours);
}

/** The same for strings of so many hours; null when nobody knows. */
export function staleWithStrings(show: Show, hours: number | null): number {
	return hours !== null && hours < NEW_STRINGS_HOURS
		? show.staleNewSeconds
		: show.staleAfterSeconds;
}

/** How ready it is at `atMs` for being played as it stands. */
export function readiness(show: Show, state: InstrumentState, atMs: number): Readiness {
	const { readyAtMs, stringsDown } = state.context;
	const isAtHand = state.value === 'racked' || state.value === 'staged';
	if (readyAtMs === null || !isAtHand || stringsDown.length > 0) return NOT_READY;
	const ageSeconds = Math.max(0, atMs - readyAtMs) / 1000;
	const isStale = ageSeconds > staleAfterSeconds(show, state);
	return { isReady: !isStale, isStale, ageSeconds };
}
