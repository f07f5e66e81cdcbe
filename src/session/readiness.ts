// Whether an instrument is ready, and how old that is. Asked with a time given, so that nothing
// depends on a timer that must not be missed.

import type { InstrumentState } from '../../machines/instrument.ts';
import type { Instrument, Show } from '../showfile/show.ts';
import { findInstrument } from './find.ts';
import type { Session } from './session.ts';

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

/** An instrument of the show and how it is now. */
export type InstrumentNow = { readonly instrument: Instrument; readonly state: InstrumentState };

/**
 * How long "ready" lasts on this instrument, in seconds: the show's figure for new strings, else its own, else
 * the show's. Strings with so many hours in hands; of unknown age, null, they count as played in.
 */
export function recheckSeconds(
	show: Show,
	instrument: Instrument,
	stringHours: number | null,
): number {
	const isNew = stringHours !== null && stringHours < NEW_STRINGS_HOURS;
	return isNew ? show.staleNewSeconds : (instrument.recheckAfterSeconds ?? show.staleAfterSeconds);
}

/** How ready an instrument of the session is at `atMs`; one that it does not have is not. */
export function readinessOf(session: Session, id: string, atMs: number): Readiness {
	const instrument = findInstrument(session, id);
	const state = session.instruments[id];
	if (instrument === null || state === undefined) return NOT_READY;
	return readiness(session.show, { instrument, state }, atMs);
}

/** How ready it is at `atMs` for being played as it stands. */
export function readiness(
	show: Show,
	{ instrument, state }: InstrumentNow,
	atMs: number,
): Readiness {
	const { readyAtMs, stringsDown, stringHours } = state.context;
	const isAtHand = state.value === 'racked' || state.value === 'staged';
	if (readyAtMs === null || !isAtHand || stringsDown.length > 0) return NOT_READY;
	const ageSeconds = Math.max(0, atMs - readyAtMs) / 1000;
	const isStale = ageSeconds > recheckSeconds(show, instrument, stringHours);
	return { isReady: !isStale, isStale, ageSeconds };
}
