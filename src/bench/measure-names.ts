// What the measures of a set-up are called where they are typed and printed, in the order in which they are set:
// relief moves action, and both move intonation.

import type { SetUpMeasures } from '../tuning/set-up-drift.ts';

/** As show files name them, with where each is kept. */
export const MEASURE_NAMES: Readonly<Record<string, keyof SetUpMeasures>> = {
	relief: 'relief',
	action: 'actionLast',
	'action-first': 'actionFirst',
	pickup: 'pickup',
	nut: 'nut',
};
