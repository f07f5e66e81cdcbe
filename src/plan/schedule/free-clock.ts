// When the technician's hands are not free for work: hand-overs, and board cues that they press; and the clock
// with those windows cut out of it. Work that a hand-over or a cue pauses is one unbroken piece on this clock.

import type { NightMs } from '../../journal/entry.ts';
import type { Window } from '../demand/cue-windows.ts';
import type { PlannedHandOver } from '../plan.ts';

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
	const starts = Float64Array.from(windows, ({ fromMs }) => fromMs);
	// Where it stands still, and by how much it is behind the night's clock after so many windows.
	const stops = new Float64Array(windows.length);
	const behind = new Float64Array(windows.length + 1);
	windows.forEach(({ fromMs, untilMs }, index) => {
		const cut = behind[index] as number;
		stops[index] = fromMs - cut;
		behind[index + 1] = cut + untilMs - fromMs;
	});
	return {
		at: (ms) => {
			const passed = countUpTo(starts, ms);
			return Math.max(stops[passed - 1] ?? ms, ms - (behind[passed] as number));
		},
		firstMs: (free) => {
			const passed = countUpTo(stops, free);
			const isStop = stops[passed - 1] === free;
			return free + (behind[isStop ? passed - 1 : passed] as number);
		},
		lastMs: (free) => free + (behind[countUpTo(stops, free)] as number),
	};
}

/** How many of these, in rising order, are no more than a value; by bisection, since it is asked thousands of times. */
function countUpTo(rising: Float64Array, value: number): number {
	let low = 0;
	let high = rising.length;
	while (low < high) {
		const middle = (low + high) >> 1;
		if ((rising[middle] as number) <= value) low = middle + 1;
		else high = middle;
	}
	return low;
}

/**
 * The windows of these cues and hand-overs in order of time, those that touch made one.
 *
 * @example
 * busyWindows(cueWindows(session, plan.sections), plan.handOvers).map(({ fromMs }) => fromMs / 1000) // => [-30, 240, 465]
 */
export function busyWindows(
	cues: readonly Window[],
	handOvers: readonly Pick<PlannedHandOver, 'section' | 'wantedMs'>[],
): readonly Window[] {
	const wanted = new Map(handOvers.map(({ section, wantedMs }) => [section, wantedMs]));
	const handing = [...wanted].map(([{ startMs }, fromMs]) => ({ fromMs, untilMs: startMs }));
	const sorted = [...handing, ...cues]
		.filter(({ fromMs, untilMs }) => untilMs > fromMs)
		.sort((one, other) => one.fromMs - other.fromMs);
	const all: Window[] = [];
	for (const { fromMs, untilMs } of sorted) {
		const last = all.at(-1);
		if (last === undefined || fromMs > last.untilMs) all.push({ fromMs, untilMs });
		else all.splice(-1, 1, { ...last, untilMs: Math.max(last.untilMs, untilMs) });
	}
	return all;
}
