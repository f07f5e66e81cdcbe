// Points against an instrument that would do, for comparing plans that are otherwise equal.

import type { Instrument } from '../../showfile/show.ts';

/**
 * 10 where another was preferred, 5 for a spare, 1 for a capo. Common practice, no source.
 *
 * @example
 * preferenceCost(instruments.S1, 1, { prefer: 'A1' }) // => 16
 */
export function preferenceCost(
	instrument: Instrument,
	capo: number,
	{ prefer }: { readonly prefer: string | null },
): number {
	const isOther = prefer !== null && prefer !== instrument.id;
	return (isOther ? 10 : 0) + (instrument.spare ? 5 : 0) + (capo > 0 ? 1 : 0);
}
