// The lane of the technician's load: how many instruments wait, as steps.

import { scaleLinear } from 'd3-scale';
import { area, curveStepAfter } from 'd3-shape';
import { type Content, element } from './html-page.ts';
import { type Along, across, grid } from './timeline-axis.ts';
import { mark, texts } from './timeline-marks.ts';

const LOAD_PX = 44;

/** How many instruments wait, as steps; where a gap was is shaded: there work is done in a hurry. */
export function loadLane(along: Along): Content {
	const { timeline, at } = along;
	const load = timeline.load ?? [];
	const most = Math.max(1, ...load.map(({ waiting }) => waiting));
	const height = scaleLinear([0, most], [LOAD_PX, 6]);
	const last = load.at(-1);
	const steps = [
		...load.map(({ fromMs, waiting }) => ({ atMs: fromMs, waiting })),
		...(last === undefined ? [] : [{ atMs: last.toMs, waiting: last.waiting }]),
	];
	const path = area<(typeof steps)[number]>()
		.x(({ atMs }) => at(atMs) * 10)
		.y0(LOAD_PX)
		.y1(({ waiting }) => height(waiting))
		.curve(curveStepAfter)
		.digits(1);
	return [
		grid(along),
		timeline.gaps.map((gap) => {
			const { x, width } = across(gap, along);
			return element('rect', { class: 'gap', x, width, y: 0, height: LOAD_PX });
		}),
		element(
			'svg',
			{ viewBox: `0 0 1000 ${LOAD_PX}`, preserveAspectRatio: 'none', class: 'steps' },
			element('path', { d: path(steps) }),
		),
		load.map((one) => {
			const { x, width, part } = across(one, along);
			return mark('waiting', one.sentence, [
				element('rect', { x, width, y: 0, height: LOAD_PX }),
				one.waiting === 0
					? null
					: texts({ long: String(one.waiting), short: String(one.waiting) }, x, part),
			]);
		}),
	];
}
