// How long work at the rack took at the most, as far as the journal holds it: it has when work was done, and of what was
// done first after an instrument came back it has that moment too. When work was begun after another mark, nobody noted.

import type { Entry } from '../journal/entry.ts';
import { AWAY, type NightStep } from './night-steps.ts';

/**
 * What somebody with one pair of hands does in between, or the program off: the work that it interrupts may have been
 * begun before.
 */
const BETWEEN: ReadonlySet<Entry['k']> = new Set([
	'handed-over',
	'came-back',
	'staged',
	'found-as',
	'put-aside',
	'brought-back',
	...AWAY,
]);

/**
 * Seconds by the step that noted it: from when the instrument came back until its mark, with no other mark and nothing else
 * noted of hands in between. Waiting is in it, so none is too short; marks pressed one after the other at the end of all
 * the work say nothing of the later ones.
 */
export function workTaken(steps: readonly NightStep[]): ReadonlyMap<NightStep, number> {
	const taken = new Map<NightStep, number>();
	const show = steps.at(-1)?.after.show;
	// Where several pairs of hands work, nothing tells which of them was free.
	if (show === undefined || show.techs.length > 1) return taken;
	const marks = Map.groupBy(
		steps.filter(({ entry }) => entry.k === 'made-ready'),
		({ of }) => of,
	);
	let markMs = Number.NEGATIVE_INFINITY;
	let betweenMs = Number.NEGATIVE_INFINITY;
	for (const step of steps) {
		const { entry, of, before, after } = step;
		const lastMarkMs = markMs;
		if (entry.k === 'made-ready' || entry.k === 'all-doubted') markMs = entry.at;
		if (BETWEEN.has(entry.k)) betweenMs = entry.at;
		if (entry.k !== 'made-ready') continue;
		const state = before.instruments[entry.instrument];
		const fromMs = state?.context.backAtMs ?? null;
		if (fromMs === null || lastMarkMs > fromMs || betweenMs > fromMs) continue;
		const isAlone = marks.get(of)?.length === 1;
		// Ready before: nothing waited.
		const hasWaited =
			state !== undefined &&
			state !== after.instruments[entry.instrument] &&
			state.context.readyAtMs === null;
		if (isAlone && hasWaited) taken.set(step, (entry.at - fromMs) / 1000);
	}
	return taken;
}
