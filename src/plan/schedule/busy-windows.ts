// When the technician's hands are not free for work: hand-overs, and board cues that they press.

import type { Window } from '../demand/cue-windows.ts';
import type { PlannedHandOver, Section } from '../plan.ts';

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
