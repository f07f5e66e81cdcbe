// Work that can only be done once its instrument has been out and is back.

import type { Plan, Work } from './plan.ts';

/**
 * Whether the instrument goes into hands before the song that the work is for: until it is back, there is nothing
 * to be done to it for that.
 *
 * @example
 * goesOutFirst(plan, plan.work[0]) // => true
 */
export function goesOutFirst(
	{ handOvers }: Plan,
	{ instrument, section }: Pick<Work, 'instrument' | 'section'>,
): boolean {
	return handOvers.some(
		(one) => one.instrument === instrument && one.section.startMs < section.startMs,
	);
}
