// The picture of a night for a reader: which part of the night is drawn, and what of it is theirs.

import type { NightReport } from './night-report.ts';
import { forReader, type Reader } from './reader.ts';
import { type ClockOf, type Span, type Stretch, type Timeline, wallClock } from './timeline.ts';
import { lanesOf } from './timeline-lanes.ts';
import { loadOf } from './timeline-load.ts';
import { fewEnough } from './timeline-thinned.ts';

/** So much before the first song and after the last is drawn at most. */
const MARGIN_MS = 30 * 60_000;

const LEAST_DRAWN_MS = 60_000;

/** The picture of a night for this reader. */
export function timelineFor(whole: NightReport, reader: Reader): Timeline {
	const own = forReader(whole, reader);
	// Production asks what happened when, not what was in whose hands.
	const report = reader.who === 'production' ? { ...own, players: [], instruments: [] } : own;
	const { dayOffsetMinutes } = report;
	const clockOf: ClockOf = (atMs) => wallClock(atMs, dayOffsetMinutes);
	const part = drawnPart(report);
	const lanes = lanesOf(report, clockOf).map((lane) => ({
		...lane,
		stretches: lane.stretches.flatMap((one) => within(one, part)),
	}));
	const load = reader.who === 'tech' ? loadOf(report, part, clockOf) : null;
	const curfewMs = report.timing.curfew?.at?.atMs ?? null;
	return {
		...part,
		...fewEnough({ lanes, load }, part, clockOf),
		gaps: gapsOf(report),
		curfewMs: curfewMs !== null && curfewMs > part.fromMs && curfewMs < part.toMs ? curfewMs : null,
		dayOffsetMinutes,
	};
}

function runsOf({ songs, lanes }: NightReport): readonly Span[] {
	return songs
		.flatMap(({ runs }) =>
			runs.map(({ began, ended }) => ({
				fromMs: began.atMs,
				toMs: ended?.atMs ?? lanes.toMs,
			})),
		)
		.sort((one, other) => one.fromMs - other.fromMs);
}

/** The whole night, unless hours of it lie before the first song or after the last. */
function drawnPart(report: NightReport): Span {
	const runs = runsOf(report);
	const { fromMs, toMs } = report.lanes;
	const first = runs[0]?.fromMs;
	if (first === undefined) return { fromMs, toMs: Math.max(toMs, fromMs + LEAST_DRAWN_MS) };
	const last = runs.reduce((latest, run) => Math.max(latest, run.toMs), first);
	const curfewMs = report.timing.curfew?.at?.atMs ?? 0;
	// A curfew that is near is drawn, kept or not.
	const curfewEnd = curfewMs - last < MARGIN_MS ? curfewMs + LEAST_DRAWN_MS : 0;
	const begin = Math.min(first, Math.max(fromMs, first - MARGIN_MS));
	const end = Math.max(last, curfewEnd, Math.min(toMs, last + MARGIN_MS));
	return { fromMs: begin, toMs: Math.max(end, begin + LEAST_DRAWN_MS) };
}

function within(one: Stretch, { fromMs, toMs }: Span): readonly Stretch[] {
	if (one.toMs <= fromMs || one.fromMs >= toMs) return [];
	return [{ ...one, fromMs: Math.max(one.fromMs, fromMs), toMs: Math.min(one.toMs, toMs) }];
}

function gapsOf(report: NightReport): Timeline['gaps'] {
	const runs = runsOf(report);
	return runs.slice(1).flatMap(({ fromMs }, place) => {
		const before = runs[place]?.toMs ?? fromMs;
		return before < fromMs ? [{ fromMs: before, toMs: fromMs }] : [];
	});
}
