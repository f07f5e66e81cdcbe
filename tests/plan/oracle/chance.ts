// Numbers by chance that are the same every time: the small generator known as mulberry32 (public domain).

export type Chance = {
	/** A whole number from 0 up to, not with, `below`. */
	readonly below: (below: number) => number;
	readonly of: <T>(items: readonly T[]) => T;
	/** True so often, of one. */
	readonly is: (share: number) => boolean;
};

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
		of: (items) => items[below(items.length)]!,
		is: (share) => next() < share,
	};
}
