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
	const starts = windows.map(({ fromMs }) => fromMs);
	// Where it stands still, and by how much it is behind the night's clock after so many windows.
	const stops: number[] = [];
	const behind = [0];
	windows.forEach(({ fromMs, untilMs }, index) => {
		const cut = behind[index] as number;
		stops.push(fromMs - cut);
		behind.push(cut + untilMs - fromMs);
	});
	return {
		at: (ms) => {
			const passed = countUpTo(starts, ms);
			return Math.max(stops[passed - 1] ?? ms, ms - (behind[passed] as number));
		},
		firstMs: (free) => free + (behind[countBelow(stops, free)] as number),
		lastMs: (free) => free + (behind[countUpTo(stops, free)] as number),
	};
}

/** How many of these, in rising order, are no more than a value. */
function countUpTo(rising: readonly number[], value: number): number {
	let count = 0;
	while (count < rising.length && (rising[count] as number) <= value) count += 1;
	return count;
}

/** How many are less. */
function countBelow(rising: readonly number[], value: number): number {
	let count = 0;
	while (count < rising.length && (rising[count] as number) < value) count += 1;
	return count;
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
