// What the measures of a set-up are called where they are typed and printed.

import type { SetUpMeasures } from '../tuning/set-up-drift.ts';

/** As show files name them, with where each is kept. */
export const MEASURE_NAMES: Readonly<Record<string, keyof SetUpMeasures>> = {
	action: 'actionLast',
	'action-first': 'actionFirst',
	relief: 'relief',
	pickup: 'pickup',
	nut: 'nut',
};
