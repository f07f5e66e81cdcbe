// The picture of a night as inline SVG, a drawing for each lane so that none is cut at the end of a page. Places along the
// clock are in percent, so that letters keep their size from a phone to a sheet. No script: a mark that is pointed at
// has its title, one that has the focus shows its sentence below it.

import { scaleLinear } from 'd3-scale';
import { TIMELINE } from '../words/timeline.ts';
import { type Content, element, type Html, named } from './html-page.ts';
import type { Timeline } from './timeline.ts';
import { type Along, axis, grid } from './timeline-axis.ts';
import { classes, key, patterns, sample } from './timeline-key.ts';
import { loadLane } from './timeline-load-lane.ts';
import { moment, stretch, titles } from './timeline-marks.ts';

/** The figure with its key, and all it says once more as a table, which `id` names. */
export function timelineFigure(timeline: Timeline, id: string): Content {
	const { fromMs, toMs, lanes, load } = timeline;
	const scale = scaleLinear([fromMs, toMs], [0, 100]).clamp(true);
	const along: Along = { timeline, at: (atMs) => Math.round(scale(atMs) * 100) / 100 };
	const marks = lanes
		.flatMap(({ moments }) => moments)
		.sort((one, other) => one.atMs - other.atMs || (one.number ?? 0) - (other.number ?? 0));
	return [
		element('p', { class: 'skip' }, [
			TIMELINE.tabHint,
			' ',
			element('a', { href: `#${id}` }, TIMELINE.skip),
		]),
		patterns(),
		element('figure', { class: 'tl' }, [
			axis(along),
			...lanes.map((lane) =>
				row(lane.name, lane.kind, [
					grid(along),
					lane.stretches.map((one) => stretch(one, lane.kind, along)),
					lane.kind === 'songs' ? titles(lane.stretches, along) : null,
					lane.moments.map((one, place) =>
						moment(
							// In the lane of the songs the words would cover the numbers.
							lane.kind === 'songs' ? { ...one, words: '' } : one,
							lane.moments[place + 1],
							along,
						),
					),
				]),
			),
			load === null ? null : row(TIMELINE.load, 'load', loadLane(along)),
			key(timeline),
		]),
		marks.length === 0
			? null
			: element(
					'ul',
					{ class: 'marks' },
					marks.map((one) =>
						element('li', {}, [sample(one.what, one.number), ' ', named(one.sentence)]),
					),
				),
		element('details', { id }, [
			element('summary', {}, TIMELINE.asTable),
			element('table', {}, [
				element(
					'thead',
					{},
					element(
						'tr',
						{},
						TIMELINE.columns.map((name) => element('th', { scope: 'col' }, name)),
					),
				),
				element('tbody', {}, tableRows(timeline)),
			]),
		]),
	];
}

function tableRows({ lanes, load }: Timeline): Content {
	const rows = [
		...lanes.flatMap(({ name, stretches, moments }) =>
			[
				...stretches.map(({ fromMs, sentence }) => ({ atMs: fromMs, sentence })),
				...moments.map(({ atMs, sentence }) => ({ atMs, sentence })),
			]
				.sort((one, other) => one.atMs - other.atMs)
				.map(({ sentence }) => ({ name, sentence })),
		),
		...(load ?? []).map(({ sentence }) => ({ name: TIMELINE.load as string, sentence })),
	];
	return rows.map(({ name, sentence }) =>
		element('tr', {}, [
			element('th', { scope: 'row' }, named(name)),
			element('td', {}, named(sentence)),
		]),
	);
}

function row(name: string, kind: string, drawing: Content): Html {
	return element('div', { class: 'row' }, [
		element('div', { class: 'name' }, named(name)),
		element('svg', { class: classes('lane', kind), role: 'group', 'aria-label': name }, drawing),
	]);
}
