// How many instruments wait for the technician along a night.

import type { NightMs } from '../journal/entry.ts';
import { loadSentence } from '../words/timeline.ts';
import type { NightReport } from './night-report.ts';
import type { ClockOf, Load, Span } from './timeline.ts';

/** An instrument waits while it is not ready and in nobody's hands, where it is handed again at all. */
export function loadOf({ lanes }: NightReport, part: Span, clockOf: ClockOf): readonly Load[] {
	const changes = new Map<NightMs, number>([[part.fromMs, 0]]);
	const change = (atMs: NightMs, by: number): void => {
		const drawnMs = Math.min(part.toMs, Math.max(part.fromMs, atMs));
		changes.set(drawnMs, (changes.get(drawnMs) ?? 0) + by);
	};
	for (const spans of Object.values(lanes.instruments)) {
		const last = spans.findLastIndex(({ place }) => place === 'hands');
		for (const { fromMs, toMs, place, readiness } of spans.slice(0, Math.max(0, last))) {
			if (place === 'hands' || place === 'out' || readiness === 'ready') continue;
			change(fromMs, 1);
			change(toMs, -1);
		}
	}
	const all: (Span & { waiting: number })[] = [];
	let waiting = 0;
	const moments = [...changes].sort(([one], [other]) => one - other);
	for (const [place, [fromMs, by]] of moments.entries()) {
		waiting += by;
		const toMs = moments[place + 1]?.[0] ?? part.toMs;
		const last = all.at(-1);
		if (last?.waiting === waiting) all[all.length - 1] = { ...last, toMs };
		else if (toMs > fromMs) all.push({ fromMs, toMs, waiting });
	}
	return all.map((one) => loadStretch(one, clockOf));
}

/** With its sentence. */
export function loadStretch(one: Omit<Load, 'sentence'>, clockOf: ClockOf): Load {
	const sentence = loadSentence(clockOf(one.fromMs), clockOf(one.toMs), one.waiting);
	return { ...one, sentence };
}
