// The open tunings and capos in which one instrument gives a wanted sound. The same few are asked for
// again and again in one plan, so they are remembered.

import type { Instrument } from '../showfile/show.ts';
import { openTuningsFor } from '../tuning/capo.ts';
import { isReachable } from '../tuning/retune.ts';
import type { Tuning } from '../tuning/tuning.ts';
import type { OpenWithCapo } from './same-pitches.ts';
import { samePitches } from './same-pitches.ts';

const known = new WeakMap<Instrument, WeakMap<Tuning, readonly OpenWithCapo[]>>();

/**
 * Every open tuning with its capo in which this instrument sounds as wanted, lowest fret first: those
 * that its strings can be brought to from the tuning that the file gives. `current` is what it is in:
 * a floating bridge is not re-pitched during a show, so it has at most this one.
 *
 * @example
 * waysToSound(instruments.A2, eStandard, instruments.A2.tuning).map(({ capo }) => capo) // => [0, 1, 2, 3]
 */
export function waysToSound(
	instrument: Instrument,
	sounds: Tuning,
	current: Tuning,
): readonly OpenWithCapo[] {
	const ways = reachableWays(instrument, sounds);
	return instrument.bridge === 'floating'
		? ways.filter(({ tuning }) => samePitches(tuning, current))
		: ways;
}

function reachableWays(instrument: Instrument, sounds: Tuning): readonly OpenWithCapo[] {
	const ofInstrument = known.get(instrument) ?? new WeakMap<Tuning, readonly OpenWithCapo[]>();
	known.set(instrument, ofInstrument);
	const found = ofInstrument.get(sounds);
	if (found !== undefined) return found;
	const ways = findWays(instrument, sounds);
	ofInstrument.set(sounds, ways);
	return ways;
}

function findWays(instrument: Instrument, sounds: Tuning): readonly OpenWithCapo[] {
	if (sounds.notes.length !== instrument.tuning.notes.length) return [];
	return openTuningsFor(sounds, instrument.kind).filter(({ tuning }) =>
		isReachable(instrument.tuning.notes, tuning.notes, instrument.kind),
	);
}
