// The open tunings and capos in which one instrument gives a wanted sound. The same few are asked for
// again and again in one plan, so they are remembered.

import type { Instrument } from '../../showfile/show.ts';
import { openTuningsFor } from '../../tuning/capo.ts';
import { isReachable } from '../../tuning/retune.ts';
import type { Tuning } from '../../tuning/tuning.ts';
import type { OpenWithCapo } from './same-pitches.ts';
import { samePitches } from './same-pitches.ts';
import { soundingTuning } from './sounding-tuning.ts';

const known = new WeakMap<Instrument, WeakMap<Tuning, readonly OpenWithCapo[]>>();

/**
 * Every open tuning with its capo in which this instrument sounds as wanted (a tuning with a capo on it),
 * lowest fret first: those that its strings can be brought to from the tuning that the file gives. `current`
 * is what it is in: a floating bridge is not re-pitched during a show, so it has at most this one.
 *
 * @example
 * waysToSound(instruments.A2, { tuning: eStandard, capo: 0 }, instruments.A2.tuning).map(({ capo }) => capo) // => [0, 1, 2, 3]
 */
export function waysToSound(
	instrument: Instrument,
	wanted: OpenWithCapo,
	current: Tuning,
): readonly OpenWithCapo[] {
	const sounds = soundingTuning(wanted, instrument.kind);
	if (instrument.bridge === 'fixed') return reachableWays(instrument, sounds);
	return waysFrom(instrument, sounds).filter(({ tuning }) => samePitches(tuning, current));
}

function reachableWays(instrument: Instrument, sounds: Tuning): readonly OpenWithCapo[] {
	const ofInstrument = known.get(instrument) ?? new WeakMap<Tuning, readonly OpenWithCapo[]>();
	known.set(instrument, ofInstrument);
	const found = ofInstrument.get(sounds);
	if (found !== undefined) return found;
	const ways = waysFrom(instrument, sounds).filter(({ tuning }) =>
		isReachable(instrument.tuning.notes, tuning.notes, instrument.kind),
	);
	ofInstrument.set(sounds, ways);
	return ways;
}

function waysFrom(instrument: Instrument, sounds: Tuning): readonly OpenWithCapo[] {
	if (sounds.notes.length !== instrument.tuning.notes.length) return [];
	return openTuningsFor(sounds, instrument.kind);
}
