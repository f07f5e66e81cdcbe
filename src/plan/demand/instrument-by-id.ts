// Instruments by id, looked up for every slot of every plan.

import type { Instrument, Show } from '../../showfile/show.ts';

const known = new WeakMap<Show, ReadonlyMap<string, Instrument>>();

/**
 * The show's instruments by id, in the order of its file.
 *
 * @example
 * instrumentById(show).get('A4').slot // => '4'
 */
export function instrumentById(show: Show): ReadonlyMap<string, Instrument> {
	const found = known.get(show);
	if (found !== undefined) return found;
	const made = new Map(show.instruments.map((one) => [one.id, one]));
	known.set(show, made);
	return made;
}
