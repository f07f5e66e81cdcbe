// How long each piece of work takes on an instrument: its own times, its kind's, those for all, and
// last what is built in. One table of defaults, so that the plan and the run sheet cannot disagree.

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

/** Seconds that are built in, beside the touch-up of each kind: common practice, no source. */
export const USUAL_SECONDS = {
	wipe: 15,
	capo: 10,
	walk: 10,
	handOver: 15,
	restring: 270,
	restringFloating: 645,
	furtherString: 90,
} as const;

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
		wipe: given('wipe', USUAL_SECONDS.wipe),
		capo: given('capo', USUAL_SECONDS.capo),
		walk: given('walk', USUAL_SECONDS.walk),
		restring: given(
			'restring',
			bridge === 'floating' ? USUAL_SECONDS.restringFloating : USUAL_SECONDS.restring,
		),
		furtherString: given('further-string', USUAL_SECONDS.furtherString),
		handOver: given('hand-over', USUAL_SECONDS.handOver),
	};
}

/** The times that are given, by the file's own keys, in seconds. */
export function writtenSeconds(given: GivenTimes): Record<string, number> {
	const entries = Object.entries(given).filter(([, seconds]) => seconds !== undefined);
	return Object.fromEntries(entries) as Record<string, number>;
}
