// The small shows that plans are compared on, the same ones every time.

import type { Show } from '../../../src/showfile/show.ts';
import { chanceShow, chanceSize } from './chance-show.ts';
import { seededChance } from './seeded-chance.ts';
import { showOf } from './show-of.ts';

/** How many are tried. */
export const SMALL_SHOWS = Number(process.env.PLAN_SHOWS ?? 400);

/** The text of the show that this number stands for. */
function smallShowText(seed: number): string {
	const chance = seededChance(seed);
	return chanceShow(chance, chanceSize(chance));
}

/** The show that this number stands for. */
export function smallShow(seed: number): Show {
	return showOf(smallShowText(seed));
}
