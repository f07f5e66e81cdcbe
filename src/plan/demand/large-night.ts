// Nights larger than a real show, in which a key would wait for what is looked at of a real one.

import type { Show } from '../../showfile/show.ts';
import type { Section } from '../plan.ts';

/** What a real show comes to at the most: 40 songs with four players, 25 with five. */
const REAL_SHOW = 160;
/** Of more players than this each slot can clash with so many others that it counts for more than one. */
const FEW_PLAYERS = 4;

/**
 * How many slots are ahead, by what choosing for one takes.
 *
 * @example
 * slotsAhead(show, plan.sections) // => 9
 */
export function slotsAhead(
	{ players: { length: players } }: Pick<Show, 'players'>,
	sections: readonly Section[],
): number {
	return sections.length * players * Math.max(1, players / FEW_PLAYERS);
}

/**
 * Whether more is ahead than all of a real show.
 *
 * @example
 * isLarge(show, plan.sections) // => false
 */
export function isLarge(show: Pick<Show, 'players'>, sections: readonly Section[]): boolean {
	return slotsAhead(show, sections) > REAL_SHOW;
}
