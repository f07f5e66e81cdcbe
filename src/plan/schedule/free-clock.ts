// When the technician's hands are not free for work: hand-overs, and board cues that they press; and the clock
// with those windows cut out of it. Work that a hand-over or a cue pauses is one unbroken piece on this clock.

import type { NightMs } from '../../journal/entry.ts';
import type { Window } from '../demand/cue-windows.ts';
import type { PlannedHandOver, Section } from '../plan.ts';

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
	const from = Float64Array.from(windows, ({ fromMs }) => fromMs);
	// Where it stands still, and by how much it is behind the night's clock from then on.
	const stops = new Float64Array(windows.length);
	const behind = new Float64Array(windows.length);
	let cut = 0;
	windows.forEach(({ fromMs, untilMs }, index) => {
		stops[index] = fromMs - cut;
		cut += untilMs - fromMs;
		behind[index] = cut;
	});
	const behindAfter = (passed: number): number => behind[passed - 1] ?? 0;
	// Asked for one moment after the other, so the next is found from where the last one was.
	let near = 0;
	const countBelow = (free: number): number => {
		while (near > 0 && (stops[near - 1] as number) >= free) near -= 1;
		while (near < stops.length && (stops[near] as number) < free) near += 1;
		return near;
	};
	return {
		at: (ms) => {
			const passed = countUpTo(from, ms);
			return Math.max(stops[passed - 1] ?? ms, ms - behindAfter(passed));
		},
		firstMs: (free) => free + behindAfter(countBelow(free)),
		lastMs: (free) => free + behindAfter(countUpTo(stops, free)),
	};
}

/** How many of these, in rising order, are no more than a value. */
function countUpTo(rising: Float64Array, value: number): number {
	let low = 0;
	let high = rising.length;
	while (low < high) {
		const middle = (low + high) >> 1;
		if ((rising[middle] ?? 0) <= value) low = middle + 1;
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
	const handing = new Map<Section, Window>();
	for (const { section, wantedMs } of handOvers) {
		handing.set(section, { fromMs: wantedMs, untilMs: section.startMs });
	}
	return joined([...handing.values(), ...cues]);
}

function joined(windows: readonly Window[]): readonly Window[] {
	const sorted = windows
		.filter(({ fromMs, untilMs }) => untilMs > fromMs)
		.sort((one, other) => one.fromMs - other.fromMs);
	const all: Window[] = [];
	for (const window of sorted) {
		const last = all.at(-1);
		if (last === undefined || window.fromMs > last.untilMs) all.push(window);
		else if (window.untilMs > last.untilMs) {
			all[all.length - 1] = { fromMs: last.fromMs, untilMs: window.untilMs };
		}
	}
	return all;
}
