// What led to a state that was kept whole: folded when somebody asks for it, from the state kept before it
// on, so that damage further back in the night's file does not reach it.

import { once } from '../base/once.ts';
import type { Entry } from '../journal/entry.ts';
import type { ReadableJournal } from '../journal/night-journal.ts';
import type { Checkpoint, JournalRecord } from '../journal/record.ts';
import type { Session } from '../session/session.ts';
import { extend, goOnFrom, openTimeline, sessionOf, type Timeline } from '../session/timeline.ts';
import { type KeptNight, keptNight } from './kept-night.ts';

export type Fold = {
	readonly timeline: Timeline;
	readonly records: readonly JournalRecord<Entry>[];
	/** The session before each record, by its number. */
	readonly before: ReadonlyMap<number, Session>;
	/** What led to where this begins; null at the night's beginning. */
	readonly earlier: (() => Fold) | null;
};

export type KeptPoint = {
	readonly seq: number;
	readonly kept: KeptNight;
	/** The night as it stood, to be gone on with. */
	readonly timeline: () => Timeline;
	/** What led to it, as far as that can be read. */
	readonly past: () => Fold;
};

/** The night as it was kept there; null where nothing was kept or it has another form. */
export function keptPoint(
	opening: Session,
	journal: ReadableJournal,
	checkpoint: Checkpoint | null,
): KeptPoint | null {
	const kept = keptNight(checkpoint?.state);
	if (checkpoint === null || kept === null) return null;
	const { seq } = checkpoint;
	const earlier = once(() => keptPoint(opening, journal, journal.checkpointBefore(seq)));
	const past = once((): Fold => {
		const from = earlier();
		const records = journal.recordsAfter(from?.seq ?? 0) as readonly JournalRecord<Entry>[];
		const begin = from?.timeline() ?? openTimeline(opening);
		const some = records.filter(({ s }) => s <= seq);
		return foldFrom(begin, some, from === null ? null : from.past);
	});
	return {
		seq,
		kept,
		past,
		timeline: once(() => goOnAt(opening, kept, past)),
	};
}

/**
 * The timeline of a kept night. A step before it is taken back by folding what can be read: of a damaged
 * night that is all but what was lost.
 */
export function goOnAt(
	opening: Session,
	{ session, show, step, aside }: KeptNight,
	past: () => Fold,
): Timeline {
	const whole = { ...session, show: show ?? opening.show };
	return goOnFrom({ session: whole, step, aside }, () => past().timeline);
}

/** These records after a timeline. */
export function foldFrom(
	from: Timeline,
	records: readonly JournalRecord<Entry>[],
	earlier: Fold['earlier'],
): Fold {
	const before = new Map<number, Session>();
	let timeline = from;
	for (const record of records) {
		before.set(record.s, sessionOf(timeline));
		timeline = extend(timeline, record);
	}
	return { timeline, records, before, earlier };
}
