// A night as those who look at many nights need it, taken from its report and its steps.

import type { Gap, NightFacts } from '../history/night-facts.ts';
import { findInstrument, findSong } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { gapBetween } from '../showfile/gap-between.ts';
import { gearFacts } from './gear-facts.ts';
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
		...gearFacts({ report, steps, folder }),
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
