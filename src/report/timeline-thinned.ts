// A picture with fewer marks than the night has: short neighbours become one, which counts them.

import { manySentence } from '../words/timeline.ts';
import type { ClockOf, Load, Moment, Span, Stretch, Timeline } from './timeline.ts';
import { loadStretch } from './timeline-load.ts';

/** More marks than this are no picture, and no page that one sends. */
const MOST_MARKS = 1200;

/** With short neighbours as one, until there are no more marks than a picture holds. */
export function fewEnough(
	whole: Pick<Timeline, 'lanes' | 'load'>,
	{ fromMs, toMs }: Span,
	clockOf: ClockOf,
): Pick<Timeline, 'lanes' | 'load'> {
	let drawn = whole;
	for (
		let leastMs = (toMs - fromMs) / 2000;
		countOf(drawn) > MOST_MARKS && leastMs < toMs - fromMs;
		leastMs *= 2
	) {
		drawn = {
			lanes: whole.lanes.map((lane) => ({
				...lane,
				stretches: thinned(lane.stretches, leastMs, clockOf),
				moments: thinnedMoments(lane.moments, leastMs, clockOf),
			})),
			load: whole.load && thinnedLoad(whole.load, leastMs, clockOf),
		};
	}
	return drawn;
}

function countOf({ lanes, load }: Pick<Timeline, 'lanes' | 'load'>): number {
	return lanes.reduce(
		(sum, { stretches, moments }) => sum + stretches.length + moments.length,
		load?.length ?? 0,
	);
}

/** Neighbours that are each shorter than the least as one group. */
function shortTogether<One extends Span>(
	all: readonly One[],
	leastMs: number,
): readonly (readonly One[])[] {
	const found: One[][] = [];
	let wasShort = false;
	for (const one of all) {
		const isShort = one.toMs - one.fromMs < leastMs;
		if (wasShort && isShort) found.at(-1)?.push(one);
		else found.push([one]);
		wasShort = isShort;
	}
	return found;
}

function thinned(all: readonly Stretch[], leastMs: number, clockOf: ClockOf): readonly Stretch[] {
	return shortTogether(all, leastMs).flatMap((group) => {
		const [first, ...others] = group;
		const last = others.at(-1);
		if (first === undefined || last === undefined) return group;
		const sentence = manySentence(clockOf(first.fromMs), clockOf(last.toMs), group.length);
		return [{ ...first, toMs: last.toMs, what: 'many', label: '', long: '', sentence }];
	});
}

function thinnedMoments(
	all: readonly Moment[],
	leastMs: number,
	clockOf: ClockOf,
): readonly Moment[] {
	const found: Moment[][] = [];
	for (const one of all) {
		const last = found.at(-1);
		if (last?.[0] !== undefined && one.atMs - last[0].atMs < leastMs) last.push(one);
		else found.push([one]);
	}
	return found.flatMap((group) => {
		const [first, ...others] = group;
		const last = others.at(-1);
		if (first === undefined || last === undefined) return group;
		const sentence = manySentence(clockOf(first.atMs), clockOf(last.atMs), group.length);
		return [{ ...first, number: null, words: '', sentence }];
	});
}

/** Of short neighbours the highest counts. */
function thinnedLoad(all: readonly Load[], leastMs: number, clockOf: ClockOf): readonly Load[] {
	return shortTogether(all, leastMs).flatMap((group) => {
		const [first, ...others] = group;
		const last = others.at(-1);
		if (first === undefined || last === undefined) return group;
		const waiting = group.reduce((most, one) => Math.max(most, one.waiting), 0);
		return [loadStretch({ fromMs: first.fromMs, toMs: last.toMs, waiting }, clockOf)];
	});
}
