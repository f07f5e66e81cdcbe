// Chance that can be had again by its seed: the small generator known as mulberry32 (public domain).

export type Chance = {
	/** A whole number from 0 up to, not with, `limit`. */
	readonly below: (limit: number) => number;
	/** The same things in another order. */
	readonly shuffled: <Thing>(things: readonly Thing[]) => readonly Thing[];
};

/** The numbers of this seed, in their order. */
export function chance(seed: number): Chance {
	let state = seed >>> 0;
	const next = (): number => {
		state = (state + 0x6d2b79f5) >>> 0;
		let mixed = Math.imul(state ^ (state >>> 15), state | 1);
		mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
		return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
	};
	const below = (limit: number): number => Math.floor(next() * limit);
	return {
		below,
		// Fisher and Yates: every order is as likely.
		shuffled: (things) => {
			const left = [...things];
			return things.map(() => left.splice(below(left.length), 1)[0] as (typeof things)[number]);
		},
	};
}
