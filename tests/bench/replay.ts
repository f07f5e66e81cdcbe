// The fold: replaying a long night, and what one step costs to decide and apply.

import { join } from 'node:path';
import type { Entry } from '../../src/journal/entry.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { makePlan } from '../../src/plan/make-plan.ts';
import { apply } from '../../src/session/apply.ts';
import { decide } from '../../src/session/decide.ts';
import { openSession } from '../../src/session/open-session.ts';
import { extend, openTimeline, sessionOf } from '../../src/session/timeline.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { median, workMs } from './rounds.ts';

const ENTRIES = 10_000;

/** A night that goes on and on: stepped through, marked ready, and begun again from its first song. */
function longNight(): readonly JournalRecord<Entry>[] {
	const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));
	const records: JournalRecord<Entry>[] = [];
	let timeline = openTimeline(openSession(show));
	let count = 0;
	for (let atMs = 1_000_000; count < ENTRIES; atMs += 30_000) {
		const session = sessionOf(timeline);
		const instrument = show.instruments[records.length % show.instruments.length]?.id ?? '';
		const first = show.songs[0]?.id ?? '';
		const asked = [
			decide(session, { do: 'step', handOvers: [] }, atMs),
			decide(session, { do: 'make-ready', instrument, due: null }, atMs),
			decide(session, { do: 'choose-next', song: first }, atMs),
			decide(session, { do: 'write-memo', words: 'on and on' }, atMs),
		];
		const decision =
			session.phase.value === 'over' ? asked[2] : asked[records.length % 3 === 1 ? 1 : 0];
		const entries = decision?.ok ? decision.entries : asked[3]?.ok ? asked[3].entries : [];
		const record = {
			v: 1,
			s: records.length + 1,
			w: 'bench',
			t: atMs,
			m: atMs,
			e: entries,
		} as const;
		records.push(record);
		timeline = extend(timeline, record);
		count += entries.length;
	}
	return records;
}

export async function benchReplay(rounds: number): Promise<readonly string[]> {
	const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));
	const records = longNight();
	const entries = records.reduce((sum, { e }) => sum + e.length, 0);
	const replay = () => {
		records.reduce(extend, openTimeline(openSession(show)));
	};
	replay();
	const whole = median(Array.from({ length: rounds }, () => workMs(replay)));
	const opened = openSession(show);
	const step = median(
		Array.from({ length: 2000 }, () =>
			workMs(() => {
				const decision = decide(opened, { do: 'step', handOvers: [] }, 1_000_000);
				if (decision.ok) decision.entries.reduce(apply, opened);
			}),
		),
	);
	const plan = median(
		Array.from({ length: 200 }, () =>
			workMs(() => {
				makePlan({ session: opened, nowMs: 0, plannedZeroMs: 0 });
			}),
		),
	);
	return [
		`${`replay of ${entries} entries, no checkpoint`.padEnd(44)} ${whole.toFixed(0).padStart(6)} ms  ${((whole * 1000) / entries).toFixed(1).padStart(6)} us an entry  (targets <= 500 ms, <= 50 us)`,
		`${'one step decided and applied'.padEnd(44)} ${(step * 1000).toFixed(0).padStart(6)} us`,
		`${'one plan of the 18-song show'.padEnd(44)} ${(plan * 1000).toFixed(0).padStart(6)} us`,
	];
}
