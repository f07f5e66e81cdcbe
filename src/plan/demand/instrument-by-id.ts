// Instruments by id, looked up for every slot of every plan.

import { onceFor } from '../../base/once.ts';
import type { Instrument, Show } from '../../showfile/show.ts';

const byId = onceFor(
	({ instruments }: Show): ReadonlyMap<string, Instrument> =>
		new Map(instruments.map((one) => [one.id, one])),
);

/**
 * The show's instruments by id, in the order of its file.
 *
 * @example
 * instrumentById(show).get('A4').slot // => '4'
 */
export function instrumentById(show: Show): ReadonlyMap<string, Instrument> {
	return byId(show);
}
