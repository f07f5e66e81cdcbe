// A night as a picture's data: lanes of stretches and moments, each with its sentence. Nothing here knows how wide or
// in which colours it is drawn; what is too short to be drawn becomes one stretch that counts it.

import { dayTimeText, tenths } from '../base/show-clock.ts';
import type { NightMs } from '../journal/entry.ts';
import { incidentKindWords } from '../words/entry-words.ts';
import { songLabel, stringLabel, timedLine } from '../words/report.ts';
import {
	holdsSentence,
	loadSentence,
	type MarkWhat,
	manySentence,
	missedCueWords,
	songSentence,
	standsSentence,
	TIMELINE,
} from '../words/timeline.ts';
import { incidentLine } from './incident-line.ts';
import type { InstrumentSpan, PlayerSpan } from './lanes.ts';
import type { NightReport } from './night-report.ts';
import { forReader, type Reader } from './reader.ts';
import type { ReportIncident } from './report-incidents.ts';

/** From a moment until another. */
export type Span = { readonly fromMs: NightMs; readonly toMs: NightMs };

/** A stretch of a lane. */
export type Stretch = Span & {
	readonly what: MarkWhat;
	/** What stands in it where there is little room: the song's number, the slot, who has it; empty for nothing. */
	readonly label: string;
	/** The same where there is more. */
	readonly long: string;
	readonly sentence: string;
};

/** A moment of a lane. */
export type Moment = {
	readonly atMs: NightMs;
	readonly what: MarkWhat;
	/** Number of the incident; null for what has none. */
	readonly number: number | null;
	/** What it was, in a word or two. */
	readonly words: string;
	readonly sentence: string;
};

export type TimelineLane = {
	readonly kind: 'songs' | 'player' | 'instrument';
	readonly name: string;
	readonly stretches: readonly Stretch[];
	readonly moments: readonly Moment[];
};

/** How many instruments wait for work before they are in hands again. */
export type Load = Span & { readonly waiting: number; readonly sentence: string };

/** The part of a night that is drawn, and what is on it. */
export type Timeline = Span & {
	readonly lanes: readonly TimelineLane[];
	/** Null where the reader has no part in it. */
	readonly load: readonly Load[] | null;
	/** From the end of a song to the start of the next. */
	readonly gaps: readonly Span[];
	/** Null where there is none in this part of the night. */
	readonly curfewMs: NightMs | null;
	/** Add to UTC for the time of day. */
	readonly dayOffsetMinutes: number;
};

type ClockOf = (atMs: NightMs) => string;

/** More marks than this are no picture, and no page that one sends. */
const MOST_MARKS = 1200;
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

/** Hours and minutes on the wall. */
export function wallClock(atMs: NightMs, dayOffsetMinutes: number): string {
	return dayTimeText(atMs, dayOffsetMinutes).slice(0, 5);
}

/** With short neighbours as one, until there are no more marks than a picture holds. */
function fewEnough(
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

type Happened = Moment & {
	readonly playerId: string | null;
	readonly instrumentId: string | null;
};

function lanesOf(report: NightReport, clockOf: ClockOf): readonly TimelineLane[] {
	const { lanes, players, instruments } = report;
	const all = [
		...report.incidents.map(incidentMoment),
		...report.missedCues.map((one) => cueMoment(one, clockOf)),
	].sort((one, other) => one.atMs - other.atMs);
	const hasInstrument = ({ instrumentId }: Happened): boolean =>
		instruments.some(({ id }) => id === instrumentId);
	const hasPlayer = ({ playerId }: Happened): boolean => players.some(({ id }) => id === playerId);
	return [
		{
			kind: 'songs',
			name: TIMELINE.songs,
			stretches: songStretches(report, clockOf),
			// What has no other lane stands with the songs.
			moments: all.filter((one) => !hasInstrument(one) && !hasPlayer(one)),
		},
		...players.map(
			({ id, name }): TimelineLane => ({
				kind: 'player',
				name,
				stretches: (lanes.players[id] ?? []).flatMap((span) =>
					playerStretch(report, { span, name, clockOf }),
				),
				moments: all.filter((one) => one.playerId === id && !hasInstrument(one)),
			}),
		),
		...instruments.map(
			({ id, instrument }): TimelineLane => ({
				kind: 'instrument',
				name: instrument,
				stretches: (lanes.instruments[id] ?? []).map((span) =>
					instrumentStretch(report, { span, name: instrument, clockOf }),
				),
				moments: all.filter((one) => one.instrumentId === id),
			}),
		),
	];
}

function incidentMoment(one: ReportIncident): Happened {
	return {
		atMs: one.at.atMs,
		what: one.kind === 'string-break' ? 'break' : 'incident',
		number: one.id,
		words: one.string === null ? incidentKindWords(one.kind) : stringLabel(one.string),
		sentence: incidentLine(one),
		playerId: one.playerId,
		instrumentId: one.instrumentId,
	};
}

function cueMoment(one: NightReport['missedCues'][number], clockOf: ClockOf): Happened {
	const words = missedCueWords(one.cues);
	return {
		atMs: one.at.atMs,
		what: 'cue',
		number: null,
		words,
		sentence: timedLine(
			clockOf(one.at.atMs),
			[words, songLabel(one.position, one.song)].join(', '),
		),
		playerId: null,
		instrumentId: null,
	};
}

function songStretches({ songs, lanes }: NightReport, clockOf: ClockOf): readonly Stretch[] {
	return songs
		.flatMap(({ position, title, runs }) =>
			runs.map(({ began, ended, how }): Stretch => {
				const fromMs = began.atMs;
				const toMs = ended?.atMs ?? lanes.toMs;
				const state = how ?? 'on';
				return {
					fromMs,
					toMs,
					what: state === 'cut-short' || state === 'skipped' ? 'cut-short' : 'song',
					label: position === null ? '' : String(position),
					long: title,
					sentence: songSentence({
						...{ from: clockOf(fromMs), to: clockOf(toMs), position, title, state },
						seconds: tenths((toMs - fromMs) / 1000),
					}),
				};
			}),
		)
		.sort((one, other) => one.fromMs - other.fromMs);
}

type Told<One> = { readonly span: One; readonly name: string; readonly clockOf: ClockOf };

function playerStretch(
	{ instruments }: NightReport,
	{ span, name: player, clockOf }: Told<PlayerSpan>,
): readonly Stretch[] {
	const { fromMs, toMs, instrument: id, tuning, capo } = span;
	if (id === null) return [];
	const known = instruments.find((one) => one.id === id);
	const instrument = known?.instrument ?? id;
	const label = known?.slot?.toUpperCase() ?? instrument;
	const sentence = holdsSentence({
		...{ from: clockOf(fromMs), to: clockOf(toMs), player, instrument, tuning },
		capo: capo ?? 0,
	});
	return [{ fromMs, toMs, what: 'hands', label, long: instrument, sentence }];
}

function instrumentStretch(
	{ players }: NightReport,
	{ span, name: instrument, clockOf }: Told<InstrumentSpan>,
): Stretch {
	const { fromMs, toMs, player: id } = span;
	const from = clockOf(fromMs);
	const to = clockOf(toMs);
	const player = players.find((one) => one.id === id)?.name;
	if (player === undefined) {
		const sentence = standsSentence({ ...span, from, to, instrument });
		return { fromMs, toMs, what: standsAs(span), label: '', long: '', sentence };
	}
	const sentence = holdsSentence({ ...span, from, to, player, instrument });
	return { fromMs, toMs, what: 'hands', label: '', long: player, sentence };
}

function standsAs({ place, readiness }: InstrumentSpan): MarkWhat {
	if (place === 'out') return 'out';
	if (place === 'bench') return 'work';
	if (place === 'hands') return 'hands';
	if (readiness === 'ready') return 'ready';
	return readiness === 'stale' ? 'recheck' : 'not-ready';
}

/** An instrument waits while it is not ready and in nobody's hands, where it is handed again at all. */
function loadOf({ lanes }: NightReport, part: Span, clockOf: ClockOf): readonly Load[] {
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

function loadStretch(one: Omit<Load, 'sentence'>, clockOf: ClockOf): Load {
	const sentence = loadSentence(clockOf(one.fromMs), clockOf(one.toMs), one.waiting);
	return { ...one, sentence };
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
