// Chance that can be had again: numbers from 0 up to 1 by a seed (mulberry32, a public-domain generator).

import type { Chance } from './chance-show.ts';

/** The same numbers for the same seed. */
export function seededChance(seed: number): Chance {
	let state = seed;
	return () => {
		state = (state + 0x6d2b79f5) | 0;
		let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
		mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
		return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
	};
}
