// What has to be done to an instrument before it is handed, and how long that takes: what can be done early
// and what is to be fresh.

import type { InstrumentState } from '../../../machines/instrument.ts';
import { onceFor } from '../../base/once.ts';
import type { Instrument } from '../../showfile/show.ts';
import { retuneKind } from '../../tuning/retune.ts';
import type { Tuning } from '../../tuning/tuning.ts';
import type { OpenWithCapo } from '../demand/same-pitches.ts';
import { samePitches } from '../demand/same-pitches.ts';
import type { Job } from '../plan.ts';

/** An instrument as it is, and what it is to be in. */
type WorkAsked = {
	readonly instrument: Instrument;
	readonly state: InstrumentState;
	readonly to: OpenWithCapo;
};

export type WorkNeeded = {
	/** What all of it is called. */
	readonly job: Job;
	readonly seconds: number;
	/** Of these, the touch-up with the capo, where it moves: what is to be fresh. */
	readonly lastSeconds: number;
	/** Pitches or strings are put on, which can be done at any time. */
	readonly hasEarlyPart: boolean;
};

/**
 * The work from how it is now, as if it had not been made ready: wiping where it was played since the last
 * time, pitches, capo. New strings take the place of wiping and pitches, with what another tuning takes
 * over a touch-up on top. Seconds are the instrument's own times.
 *
 * @example
 * workNeeded({ instrument: instruments.A1, state: states.A1, to: { tuning: dropD, capo: 0 } }) // => { job: 'retune', seconds: 60, lastSeconds: 45, hasEarlyPart: true }
 * workNeeded({ instrument: instruments.A1, state: states.A1, to: { tuning: eStandard, capo: 3 } }) // => { job: 'capo', seconds: 55, lastSeconds: 55, hasEarlyPart: false }
 */
export function workNeeded({ instrument, state, to }: WorkAsked): WorkNeeded {
	const { times } = instrument;
	const { tuning, capo, isToWipe, stringsDown } = state.context;
	const pitches = pitchSeconds(instrument, tuning, to.tuning);
	const isCapoMoved = capo !== to.capo;
	const capoSeconds = isCapoMoved ? times.capo : 0;
	const lastSeconds = times.touchUp + capoSeconds;
	if (stringsDown.length > 0) {
		const further = (stringsDown.length - 1) * times.furtherString;
		const seconds = times.restring + further + (pitches - times.touchUp) + capoSeconds;
		return { job: 'restring', seconds, lastSeconds, hasEarlyPart: true };
	}
	const seconds = (isToWipe ? times.wipe : 0) + pitches + capoSeconds;
	const isRetuned = !samePitches(tuning, to.tuning);
	const job = isRetuned ? 'retune' : isCapoMoved ? 'capo' : 'touch-up';
	return { job, seconds, lastSeconds, hasEarlyPart: isRetuned };
}

/**
 * Whether it is as wanted already and was made ready so, not used since, and so late that at `atMs` it
 * is no older than `recheckSeconds`.
 *
 * @example
 * isDoneAlready({ instrument: instruments.A1, state: states.A1, to: { tuning: eStandard, capo: 0 } }, { atMs: 0, recheckSeconds: 900 }) // => true
 */
export function isDoneAlready(
	{ state, to }: WorkAsked,
	when: { readonly atMs: number; readonly recheckSeconds: number },
): boolean {
	const { tuning, capo, readyAtMs, stringsDown } = state.context;
	return (
		readyAtMs !== null &&
		state.value !== 'inHands' &&
		stringsDown.length === 0 &&
		capo === to.capo &&
		samePitches(tuning, to.tuning) &&
		when.atMs - readyAtMs <= when.recheckSeconds * 1000
	);
}

/**
 * Seconds from one open tuning to another on this instrument, its touch-up included.
 *
 * @example
 * pitchSeconds(instruments.A1, eStandard, eStandard) // => 45
 */
export function pitchSeconds(instrument: Instrument, from: Tuning, to: Tuning): number {
	return secondsOf(instrument)(from)(to);
}

// A plan weighs the same few changes of each instrument thousands of times.
const secondsOf = onceFor(({ times, kind }: Instrument) =>
	onceFor((from: Tuning) =>
		onceFor((to: Tuning): number => {
			switch (retuneKind(from.notes, to.notes, kind)) {
				case 'none':
					return times.touchUp;
				case 'one-string':
					return times.oneString;
				case 'two-strings':
					return times.twoStrings;
				case 'all-same-interval':
					return times.allStrings;
				case 'other':
					return times.otherTuning;
			}
		}),
	),
);
