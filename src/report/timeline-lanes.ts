// The lanes of a night's picture: the songs, what each player had, how each instrument stood, with what happened on them.

import { incidentKindWords } from '../words/entry-words.ts';
import { songLabel, stringLabel, timedLine } from '../words/report.ts';
import {
	holdsSentence,
	type MarkWhat,
	missedCueWords,
	songSentence,
	standsSentence,
	TIMELINE,
} from '../words/timeline.ts';
import { incidentLine } from './incident-line.ts';
import type { InstrumentSpan, PlayerSpan } from './lanes.ts';
import type { NightReport } from './night-report.ts';
import type { ReportIncident } from './report-incidents.ts';
import { secondsOf } from './report-time.ts';
import type { ClockOf, Moment, Stretch, TimelineLane } from './timeline.ts';

type Happened = Moment & {
	readonly playerId: string | null;
	readonly instrumentId: string | null;
};

export function lanesOf(report: NightReport, clockOf: ClockOf): readonly TimelineLane[] {
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
						seconds: secondsOf(toMs - fromMs),
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
