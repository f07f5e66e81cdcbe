// What a report holds is what its journal holds: an independent reading of the records (`independent-night.ts`) gives the
// same songs, hand-overs, incidents, hands and work, for the rehearsed nights and for ten nights of chance.

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/journal/entry.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import type { NightReport } from '../../src/report/night-report.ts';
import type { Show } from '../../src/showfile/show.ts';
import { chanceNights, NIGHTS } from './chance-nights.ts';
import { independentNight, plannedTimes } from './independent-night.ts';
import { nightOf, scriptReport } from './script-night.ts';

const SCRIPTS = new URL('../rehearsals/', import.meta.url);
const names = readdirSync(SCRIPTS).filter((name) => name.endsWith('.txt'));

describe('a report holds what its journal holds', () => {
	test.each(names)('%s', (name) => {
		const script = readFileSync(new URL(name, SCRIPTS), 'utf8');
		const { show, records } = nightOf(name, script);
		agrees(scriptReport(name, script), show, records);
	});

	test.each(NIGHTS)('a night of chance, %s', (seed) => {
		const { show, records, report } = chanceNights(seed);
		agrees(report, show, records);
	});

	test('the nights of chance have of everything', () => {
		const all = NIGHTS.map((seed) => chanceNights(seed).report);
		const some = (count: (report: NightReport) => number): number =>
			all.reduce((sum, report) => sum + count(report), 0);
		expect(some(({ handOvers }) => handOvers.length)).toBeGreaterThan(50);
		expect(some(({ incidents }) => incidents.length)).toBeGreaterThan(5);
		expect(some(({ work }) => work.length)).toBeGreaterThan(30);
		expect(some(({ takenBack }) => takenBack)).toBeGreaterThan(5);
		const isCorrected = ({ correctedFrom }: NightReport['handOvers'][number]) =>
			correctedFrom !== null;
		expect(some(({ handOvers }) => handOvers.filter(isCorrected).length)).toBeGreaterThan(0);
		expect(
			some(({ handOvers }) => handOvers.filter((one) => one.takenSeconds !== null).length),
		).toBeGreaterThan(5);
	});
});

function agrees(report: NightReport, show: Show, records: readonly JournalRecord<Entry>[]): void {
	const read = independentNight(show, records);
	const runs = report.songs
		.filter((song) => song.runs.length > 0)
		.map(({ item, runs: own }) => [
			item,
			own.map(({ began, ended, how }) => ({ began: began.atMs, ended: ended?.atMs ?? null, how })),
		]);
	expect(Object.fromEntries(runs)).toEqual(Object.fromEntries(read.runs));
	expect(
		report.handOvers.map(({ atMs, playerId, instrumentId, by, correctedFrom }) => ({
			at: atMs,
			player: playerId,
			instrument: instrumentId,
			by,
			isCorrected: correctedFrom !== null,
		})),
	).toEqual(read.given.map(({ sinceCall: _, id: _of, ...one }) => one));
	for (const [at, one] of report.handOvers.entries()) {
		const since = read.given[at]?.sinceCall ?? null;
		const isBetween = one.noted === 'by-itself' && since !== null && one.takenSeconds !== null;
		if (isBetween) expect(one.takenSeconds).toBeCloseTo(since / 1000, 1);
	}
	expect(
		report.incidents.map((one) => ({
			id: one.record,
			at: one.at.atMs,
			kind: one.kind === 'not described' ? null : one.kind,
			player: one.playerId,
			instrument: one.instrumentId,
			string: one.string,
			standIn: one.standInId,
			silence: one.silenceSeconds,
		})),
	).toEqual(
		read.troubles.map(({ words: _, silence, ...one }) => ({
			...one,
			silence: silence === null ? null : Math.round(silence * 10) / 10,
		})),
	);
	expect(
		Object.fromEntries(
			Object.entries(report.lanes.players).map(([id, spans]) => [
				id,
				inHands(spans.map(({ fromMs: from, toMs: to, instrument }) => ({ from, to, instrument }))),
			]),
		),
	).toEqual(
		Object.fromEntries(Object.entries(read.held).map(([id, spans]) => [id, inHands(spans)])),
	);
	sumsAgree(report, show);
	expect(report.work.map(({ at, instrumentId }) => [at.atMs, instrumentId])).toEqual(
		read.ready.map(({ at, instrument }) => [at, instrument]),
	);
	expect(
		report.songs
			.filter(({ isMoved }) => isMoved)
			.map(({ item }) => item)
			.sort(),
	).toEqual([...read.moved].sort());
	expect(report.memos).toHaveLength(read.memos.length);
	expect(report.boardsCorrected).toHaveLength(read.pedals);
	const typed = report.packs.filter(({ what }) => what !== 'left-off');
	expect(typed.map(({ what, packId }) => `pack-${what} ${packId}`)).toEqual(read.packs);
	expect(report.takenBack).toBe(read.takenBack);
	const planned = [...report.songs, ...report.songsGone]
		.flatMap((song) => (song.planned ? [{ song: song.song, ...song.planned }] : []))
		.sort((one, other) => one.position - other.position);
	expect(
		planned.map(({ song, startSeconds, seconds }) => ({ song, start: startSeconds, seconds })),
	).toEqual(plannedTimes(show));
}

/** Songs and gaps fill the show, and what players had is what instruments were in hands for. */
function sumsAgree(report: NightReport, show: Show): void {
	const runs = report.songs
		.flatMap((song) => song.runs)
		.sort((one, other) => one.began.atMs - other.began.atMs);
	const sum = (numbers: readonly (number | null)[]): number =>
		numbers.reduce<number>((total, one) => total + (one ?? 0), 0);
	const [first, last] = [runs[0], runs.at(-1)];
	if (first && last?.ended) {
		const filled = sum(runs.flatMap(({ seconds, gapSeconds }) => [seconds, gapSeconds]));
		expect(filled).toBeCloseTo((last.ended.atMs - first.began.atMs) / 1000, 0);
	}
	const held = Object.values(report.lanes.players)
		.flat()
		.filter(({ instrument }) => instrument !== null)
		.map(({ fromMs, toMs }) => (toMs - fromMs) / 1000);
	expect(sum(report.instruments.map(({ secondsInHands }) => secondsInHands))).toBeCloseTo(
		sum(held),
		0,
	);
	// Strings that stayed on have the hours that the file gives them and those in hands tonight, to the very end.
	for (const { id, restrings, stringHours, secondsInHands } of report.instruments) {
		const before = show.instruments.find((one) => one.id === id)?.strung.hours ?? null;
		if (restrings > 0 || before === null) continue;
		expect(Math.abs((stringHours ?? 0) - before - secondsInHands / 3600)).toBeLessThan(0.06);
	}
}

type Held = { readonly from: number; readonly to: number; readonly instrument: string | null };

/** One interval for what stayed in hands, however its tuning or capo changed. */
function inHands(spans: readonly Held[]): readonly Held[] {
	const all: Held[] = [];
	for (const span of spans) {
		const last = all.at(-1);
		if (last?.instrument === span.instrument && last.to === span.from) {
			all[all.length - 1] = { ...last, to: span.to };
		} else all.push(span);
	}
	return all;
}
