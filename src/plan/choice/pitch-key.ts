// An open tuning as a key: the same for the same pitches, however the notes are spelled.

import type { Tuning } from '../../tuning/tuning.ts';
import { openMidis } from '../demand/same-pitches.ts';

const known = new WeakMap<Tuning, string>();

/**
 * MIDI notes in a row; remembered, since it is asked for every hand.
 *
 * @example
 * pitchKey({ tuning: eStandard }) // => '40 45 50 55 59 64'
 */
export function pitchKey({ tuning }: { readonly tuning: Tuning }): string {
	const found = known.get(tuning);
	if (found !== undefined) return found;
	const key = openMidis(tuning).join(' ');
	known.set(tuning, key);
	return key;
}
