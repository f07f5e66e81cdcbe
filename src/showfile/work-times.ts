// How long each piece of work takes on an instrument: its own times, its kind's, those for all, and
// last what is usual. One table of defaults, so that the plan and the run sheet cannot disagree.

import type { InstrumentKind } from '../tuning/kind.ts';
import { KINDS } from '../tuning/kind.ts';
import { retuneSeconds } from '../tuning/retune.ts';
import type { WorkTimes } from './show.ts';

/** Seconds by the file's own keys; what is not given is left to the next layer. */
export type GivenTimes = Readonly<Partial<Record<TimeKey, number | undefined>>>;

/** The keys of `times` in a show file. */
export type TimeKey =
	| 'touch-up'
	| 'one-string'
	| 'two-strings'
	| 'all-strings'
	| 'other-tuning'
	| 'wipe'
	| 'capo'
	| 'walk'
	| 'restring'
	| 'further-string'
	| 'hand-over';

// All of these are common practice, no source; a show file can change each.
const WIPE = 15;
const CAPO = 10;
const WALK = 10;
const HAND_OVER = 15;
const RESTRING = 270;
const RESTRING_FLOATING = 645;
const FURTHER_STRING = 90;

/**
 * Seconds for every piece of work, from the first layer that gives them. A change of tuning that no
 * layer gives follows the touch-up that holds for the instrument: its own seconds and what the change
 * adds to them.
 */
export function workTimesOf(
	kind: InstrumentKind,
	bridge: 'fixed' | 'floating',
	layers: readonly GivenTimes[],
): WorkTimes {
	const given = (key: TimeKey, usual: number): number => {
		const layer = layers.find((times) => times[key] !== undefined);
		return layer?.[key] ?? usual;
	};
	const touchUp = given('touch-up', KINDS[kind].touchUpSeconds);
	return {
		touchUp,
		oneString: given('one-string', retuneSeconds('one-string', touchUp)),
		twoStrings: given('two-strings', retuneSeconds('two-strings', touchUp)),
		allStrings: given('all-strings', retuneSeconds('all-same-interval', touchUp)),
		otherTuning: given('other-tuning', retuneSeconds('other', touchUp)),
		wipe: given('wipe', WIPE),
		capo: given('capo', CAPO),
		walk: given('walk', WALK),
		restring: given('restring', bridge === 'floating' ? RESTRING_FLOATING : RESTRING),
		furtherString: given('further-string', FURTHER_STRING),
		handOver: given('hand-over', HAND_OVER),
	};
}
