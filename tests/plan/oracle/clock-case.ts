// Work for one pair of hands by chance, in whole seconds of the night, with moments when the hands are not
// free; and what an order of it comes to, second by second.

import { type Chance, chance } from './chance.ts';

export type Chore = { readonly from: number; readonly seconds: number; readonly wanted: number };

export type ClockCase = {
	readonly chores: readonly Chore[];
	/** Hands are not free from the first up to the second of these; in order, apart. */
	readonly busy: readonly (readonly [from: number, until: number])[];
};

/** So many chores, close enough together for their order to matter. */
export function clockCase(seed: number, count: number, isBusy: boolean): ClockCase {
	const dice = chance(seed);
	const spread = count * dice.of([2, 4, 6]);
	const chores = Array.from({ length: count }, (): Chore => {
		const from = dice.below(spread);
		const seconds = 1 + dice.below(9);
		return { from, seconds, wanted: from + seconds + dice.below(dice.of([4, 12, 4 * count])) };
	});
	return { chores, busy: isBusy ? windows(dice, spread * 2) : [] };
}

function windows(dice: Chance, end: number): [number, number][] {
	const all: [number, number][] = [];
	for (let time = 1 + dice.below(6); time < end; time += 1 + dice.below(12)) {
		const until = time + 1 + dice.below(5);
		all.push([time, until]);
		time = until;
	}
	return all;
}

/** Whole seconds in which the hands are free, from 0 on, more than enough for all. */
export function freeSeconds({ chores, busy }: ClockCase): number[] {
	const last = Math.max(...chores.map(({ from }) => from));
	const needed = chores.reduce((sum, { seconds }) => sum + seconds, 0);
	const free: number[] = [];
	let after = 0;
	for (let second = 0; after < needed; second += 1) {
		if (busy.some(([from, until]) => from <= second && second < until)) continue;
		free.push(second);
		if (second >= last) after += 1;
	}
	return free;
}

/** Seconds by which each is late in an order, begun as soon as may be; in that order. */
export function latesOf({ chores }: ClockCase, order: readonly number[], free: number[]): number[] {
	let next = 0;
	return order.map((index) => {
		const { from, seconds, wanted } = chores[index]!;
		while (free[next]! < from) next += 1;
		next += seconds;
		return free[next - 1]! + 1 - wanted;
	});
}

export function latenessOf(asked: ClockCase, order: readonly number[], free: number[]): number {
	return Math.max(...latesOf(asked, order, free));
}

/** The same with nothing begun before a moment. */
export function begunFrom(asked: ClockCase, second: number): ClockCase {
	const chores = asked.chores.map((one) => ({ ...one, from: Math.max(one.from, second) }));
	return { ...asked, chores };
}

/** The least that the worst is late, over all orders. */
export function leastByTrying(asked: ClockCase): number {
	const free = freeSeconds(asked);
	let least = Number.POSITIVE_INFINITY;
	const order: number[] = [];
	const goOn = (left: readonly number[]): void => {
		if (left.length === 0) least = Math.min(least, latenessOf(asked, order, free));
		for (const index of left) {
			order.push(index);
			goOn(left.filter((one) => one !== index));
			order.pop();
		}
	};
	goOn(asked.chores.map((_, index) => index));
	return least;
}
