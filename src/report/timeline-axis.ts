// Where a moment is along the picture of a night, and the clock over it.

import { scaleUtc } from 'd3-scale';
import type { NightMs } from '../journal/entry.ts';
import { curfewSentence } from '../words/timeline.ts';
import { type Content, element, type Html } from './html-page.ts';
import { type Span, type Timeline, wallClock } from './timeline.ts';

const TICKS = 7;

/** A picture with its places along the clock. */
export type Along = {
	readonly timeline: Timeline;
	/** Percent of the lane at a moment, to 0.01. */
	readonly at: (atMs: NightMs) => number;
};

/** Full and half hours and less, as fit; every other one on a phone. */
function ticks({ timeline }: Along): readonly NightMs[] {
	const { fromMs, toMs, dayOffsetMinutes } = timeline;
	const offsetMs = dayOffsetMinutes * 60_000;
	return scaleUtc([fromMs + offsetMs, toMs + offsetMs], [0, 1])
		.ticks(TICKS)
		.map((tick) => tick.getTime() - offsetMs);
}

export function axis(along: Along): Html {
	const { timeline, at } = along;
	const { curfewMs, dayOffsetMinutes } = timeline;
	return element('div', { class: 'row', 'aria-hidden': 'true' }, [
		element('div', { class: 'name' }),
		element('svg', { class: 'axis' }, [
			ticks(along).map((tick, place) =>
				element(
					'text',
					{
						...{ x: `${at(tick)}%`, y: 14, class: place % 2 === 0 ? 'a' : 'w' },
						'text-anchor': anchorAt(at(tick)),
					},
					wallClock(tick, dayOffsetMinutes),
				),
			),
			curfewMs === null
				? null
				: element(
						'text',
						{ x: `${at(curfewMs)}%`, y: 28, class: 'curfew', 'text-anchor': 'end' },
						curfewSentence(wallClock(curfewMs, dayOffsetMinutes)),
					),
		]),
	]);
}

function anchorAt(percent: number): 'start' | 'middle' | 'end' {
	if (percent < 4) return 'start';
	return percent > 96 ? 'end' : 'middle';
}

export function grid(along: Along): Content {
	const { at } = along;
	const { curfewMs } = along.timeline;
	const line = (atMs: NightMs, kind: string): Html => {
		const x = `${at(atMs)}%`;
		return element('line', { class: kind, x1: x, x2: x, y1: 0, y2: '100%' });
	};
	return [
		ticks(along).map((tick) => line(tick, 'grid')),
		curfewMs === null ? null : line(curfewMs, 'curfew'),
	];
}

/** Where a stretch begins, how wide it is, and that as a part of the whole. */
export function across({ fromMs, toMs }: Span, { at }: Along) {
	const from = at(fromMs);
	const part = Math.max(0, Math.round((at(toMs) - from) * 100) / 100);
	return { x: `${from}%`, width: `${part}%`, part: part / 100 };
}
