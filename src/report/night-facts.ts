// A night as those who look at many nights need it, taken from its report and its steps.

import { type GearId, gearId } from '../gear/gear-id.ts';
import type { Gap, InstrumentNight, NightFacts, StringBreak } from '../history/night-facts.ts';
import type { Entry, NightMs } from '../journal/entry.ts';
import { findInstrument, findSong } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { gapBetween } from '../showfile/gap-between.ts';
import { measuredPieces } from './measured-pieces.ts';
import type { NightReport } from './night-report.ts';
import type { NightStep } from './night-steps.ts';
import { runsInOrder } from './report-songs.ts';

export type FactsAsked = {
	readonly report: NightReport;
	readonly steps: readonly NightStep[];
	/** Folder of the show file, by which instruments without a `gear` of their own are known. */
	readonly folder: string;
	/** `2026-06-12`, where it was played. */
	readonly day: string;
};

/** The facts of a night; empty lists where nothing happened in it. */
export function factsOfNight({ report, steps, folder, day }: FactsAsked): NightFacts {
	const last = steps.at(-1)?.after ?? null;
	const gearOf = (id: string): GearId =>
		gearId((last && findInstrument(last, id)) ?? { id }, folder);
	const lateness = report.handOvers.map(({ isLate }) => isLate);
	return {
		night: report.night,
		title: report.title,
		day,
		songs: report.songs.flatMap(({ song, title, runs }) =>
			runs.flatMap(({ seconds, how }) =>
				seconds === null || how === 'skipped'
					? []
					: [
							{
								song,
								title,
								plannedSeconds: lengthOf(last, song),
								seconds,
								isWhole: how === 'played',
							},
						],
			),
		),
		gaps: last === null ? [] : gapsOf(last, report),
		pieces: measuredPieces(report, steps),
		lateHandOvers: lateness.filter((isLate) => isLate === true).length,
		timelyHandOvers: lateness.filter((isLate) => isLate === false).length,
		breaks: last === null ? [] : breaksOf(last, report, gearOf),
		instruments: last === null ? [] : instrumentsOf(last, { report, steps, gearOf }),
	};
}

function lengthOf(last: Session | null, song: string): number | null {
	return (last && findSong(last, song)?.lengthSeconds) ?? null;
}

function gapsOf(last: Session, { songs, handOvers }: NightReport): readonly Gap[] {
	const runs = runsInOrder(last);
	return runs.flatMap(({ item, run }, place): Gap[] => {
		const before = runs[place - 1];
		const endedMs = before?.run.endedAtMs ?? null;
		if (before === undefined || endedMs === null || before.item.key === item.key) return [];
		const from = last.list.findIndex(({ key }) => key === before.item.key);
		const to = last.list.findIndex(({ key }) => key === item.key);
		if (last.list.slice(from + 1, to).some(({ kind }) => kind === 'interval')) return [];
		const made = handOvers.filter(
			(one) =>
				one.item === item.key &&
				one.wantedSeconds !== null &&
				one.atMs >= endedMs &&
				one.atMs <= (run.endedAtMs ?? Number.POSITIVE_INFINITY),
		);
		const given = made.flatMap(({ instrumentId }) => instrumentId ?? []);
		const lastMs = Math.max(...made.map(({ atMs }) => atMs));
		const isTimed =
			made.length > 0 &&
			made.every(({ noted, atMs }) => noted === 'by-itself' && atMs <= run.beganAtMs);
		return [
			{
				song: item.song,
				title: songs.find((one) => one.item === item.key)?.title ?? '',
				plannedSeconds: gapBetween({
					given: item.gapSeconds,
					before: findSong(last, before.item.song) ?? { ends: 'stop' },
					isEncoreBegin: item.isEncore && !before.item.isEncore,
				}),
				seconds: (run.beganAtMs - endedMs) / 1000,
				handOvers: given.length,
				neededSeconds: given.reduce(
					(sum, id) => sum + (findInstrument(last, id)?.times.handOver ?? 0),
					0,
				),
				leftSeconds: isTimed ? (run.beganAtMs - lastMs) / 1000 : null,
				isLate: made.some(({ isLate }) => isLate === true),
			},
		];
	});
}

function breaksOf(
	last: Session,
	{ incidents }: NightReport,
	gearOf: (id: string) => GearId,
): readonly StringBreak[] {
	return incidents.flatMap((one): StringBreak[] => {
		const { instrumentId, string } = one;
		if (one.kind !== 'string-break' || instrumentId === null) return [];
		const gauges = findInstrument(last, instrumentId)?.strings ?? [];
		return [
			{
				gear: gearOf(instrumentId),
				shown: one.instrument ?? instrumentId,
				player: one.player,
				string,
				gauge: string === null ? null : (gauges[string - 1] ?? null),
				silentSeconds: one.silenceSeconds,
			},
		];
	});
}

function instrumentsOf(
	last: Session,
	{
		report,
		steps,
		gearOf,
	}: Pick<FactsAsked, 'report' | 'steps'> & { readonly gearOf: (id: string) => GearId },
): readonly InstrumentNight[] {
	return report.instruments.flatMap((one): InstrumentNight[] => {
		const instrument = findInstrument(last, one.id);
		if (instrument === null) return [];
		const hoursUntil = (untilMs: NightMs): number =>
			(report.lanes.instruments[one.id] ?? [])
				.filter(({ place }) => place === 'hands')
				.reduce((sum, { fromMs, toMs }) => sum + Math.max(0, Math.min(toMs, untilMs) - fromMs), 0) /
			3_600_000;
		return [
			{
				...{ gear: gearOf(one.id), shown: one.instrument, kind: instrument.kind },
				strung: instrument.strung,
				hours: hoursUntil(Number.POSITIVE_INFINITY),
				restrings: steps.flatMap(({ entry, before, after }) => {
					const was = before.instruments[one.id];
					if (!isRestringOf(entry, one.id) || was === undefined) return [];
					if (was === after.instruments[one.id]) return [];
					return [{ afterHours: hoursUntil(entry.at), strings: was.context.stringsDown }];
				}),
			},
		];
	});
}

function isRestringOf(entry: Entry, instrument: string): boolean {
	return entry.k === 'made-ready' && entry.instrument === instrument && entry.isRestrung === true;
}
