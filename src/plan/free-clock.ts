// The technician's clock with the busy windows cut out of it: it stands still while hands are not free.
// Work that a hand-over or a cue pauses is one unbroken piece on this clock.

import type { NightMs } from '../journal/entry.ts';
import type { Window } from './busy-windows.ts';

export type FreeClock = {
	/** What the free clock shows at a moment of the night's. */
	readonly at: (ms: NightMs) => number;
	/** The first moment of the night at which the free clock shows this. */
	readonly firstMs: (free: number) => NightMs;
	/** The last moment of the night at which the free clock shows this: past a window that it meets. */
	readonly lastMs: (free: number) => NightMs;
};

/**
 * A clock that stands still in each of these windows, given in order and apart from each other. Before
 * the first it agrees with the night's.
 *
 * @example
 * freeClock([{ fromMs: 10, untilMs: 15 }]).at(20) // => 15
 * freeClock([{ fromMs: 10, untilMs: 15 }]).firstMs(10) // => 10
 * freeClock([{ fromMs: 10, untilMs: 15 }]).lastMs(10) // => 15
 */
export function freeClock(windows: readonly Window[]): FreeClock {
	let cut = 0;
	const stops = windows.map(({ fromMs, untilMs }) => {
		const stop = { free: fromMs - cut, fromMs, untilMs, cut };
		cut += untilMs - fromMs;
		return stop;
	});
	const lastStop = (isBefore: (stop: (typeof stops)[number]) => boolean) =>
		stops.findLast(isBefore);
	return {
		at: (ms) => {
			const stop = lastStop(({ fromMs }) => fromMs <= ms);
			if (stop === undefined) return ms;
			return Math.max(stop.free, ms - stop.cut - (stop.untilMs - stop.fromMs));
		},
		firstMs: (free) => {
			const stop = lastStop((one) => one.free < free);
			return stop === undefined ? free : free + stop.cut + (stop.untilMs - stop.fromMs);
		},
		lastMs: (free) => {
			const stop = lastStop((one) => one.free <= free);
			return stop === undefined ? free : free + stop.cut + (stop.untilMs - stop.fromMs);
		},
	};
}
