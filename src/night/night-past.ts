// What happened so far tonight: the steps, and the log in words. Reads as little of the journal as it
// can: a night taken up again goes on from the last state kept whole, and older steps are looked at
// only when somebody asks for them.

import { once } from '../base/once.ts';
import type { Entry } from '../journal/entry.ts';
import type { ReadableJournal } from '../journal/night-journal.ts';
import type { JournalRecord, RecordId } from '../journal/record.ts';
import { inOrder } from '../journal/record-order.ts';
import type { LogLine } from '../screen/screen-state.ts';
import type { Session } from '../session/session.ts';
import {
	extend,
	keptOf,
	openTimeline,
	sessionOf,
	stepOfRecord,
	type Timeline,
	undoneBy,
} from '../session/timeline.ts';
import { entryWords } from '../words/entry-words.ts';
import { type KeptNightRecord, keptNightRecord } from './kept-night.ts';
import { type Fold, foldFrom, goOnAt, keptPoint } from './kept-past.ts';
import { type LastKnown, lastKnown } from './night-clock.ts';

type NightRecord = JournalRecord<Entry>;

export type NightPast = {
	readonly timeline: () => Timeline;
	readonly session: () => Session;
	/** Whether the step that would be taken back is folded again from what can be read, and not all of that can be. */
	readonly isGapBefore: () => boolean;
	/** Takes in one more record. */
	readonly take: (record: NightRecord) => void;
	/** What the night's clock goes on from; null for a night without records. */
	readonly lastKnown: () => LastKnown | null;
	/** Newest first, made as far as it is read. */
	readonly log: Iterable<LogLine>;
};

/**
 * So many of the newest records stay in memory with the session before each when the night is kept whole:
 * enough for the largest screen that shows the log beside the stage view.
 */
const MOST_RECENT = 100;

/** A step of the log in words. */
type LogStep = {
	/** The step that it is, or is told of. */
	readonly step: RecordId;
	/** When each of its entries was, in their order. */
	readonly atMs: readonly number[];
	/** Empty for an entry that nobody needs to read. */
	readonly words: readonly string[];
	readonly kinds: readonly Entry['k'][];
	readonly isTakenBack: boolean;
};

/** A state kept whole: steps before it are folded again when somebody asks for them. */
type Anchor = { readonly seq: number; readonly past: () => Fold };

/**
 * The past that the journal holds, from now on kept whole in it every now and then. With each state
 * kept all but the newest steps before it leave the memory, which so does not grow with the night.
 */
export function openPast(opening: Session, journal: ReadableJournal): NightPast {
	const found = keptPoint(opening, journal, journal.checkpoint);
	const first = found?.timeline() ?? openTimeline(opening);
	const before = new Map<number, Session>();
	const wordsKnown = new Map<number, readonly string[]>();
	let recent: NightRecord[] = [];
	let anchor: Anchor | null = found;
	let timeline = first;
	let known = found?.kept.known ?? null;

	function take(record: NightRecord): void {
		recent.push(record);
		before.set(record.s, sessionOf(timeline));
		timeline = extend(timeline, record);
		known = lastKnown(known, record);
	}

	/** A record's entries in words, made once, with what was known when it was written. */
	function wordsOf({ s, e }: NightRecord, session: Session): readonly string[] {
		const ready = wordsKnown.get(s);
		if (ready) return ready;
		const words = e.map((entry) => entryWords(entry, session.show, session));
		wordsKnown.set(s, words);
		return words;
	}

	/** What is in memory, then what led to it, folded again as far as it is asked for. */
	function* pieces(): Generator<Pick<Fold, 'records' | 'before'>> {
		yield { records: recent, before };
		for (let past = anchor?.past() ?? null; past; past = past.earlier?.() ?? null) yield past;
	}

	/** All records with the session before each, newest first. */
	function* backwards(): Generator<readonly [NightRecord, Session]> {
		let oldest = Number.POSITIVE_INFINITY;
		for (const piece of pieces()) {
			for (const record of piece.records.toReversed()) {
				if (record.s >= oldest) continue;
				oldest = record.s;
				yield [record, piece.before.get(record.s) ?? opening];
			}
		}
	}

	/** All steps that can be taken back or were, newest first. */
	function* steps(): Generator<LogStep> {
		const aside = new Map<RecordId, boolean>();
		for (const [record, session] of backwards()) {
			if (notesAside(record, aside)) continue;
			const step = stepOfRecord(record);
			yield {
				step,
				atMs: record.e.map(({ at }) => at),
				words: wordsOf(record, session),
				kinds: record.e.map(({ k }) => k),
				isTakenBack: aside.get(step) === true,
			};
		}
	}

	/** What was kept stands from now on for the steps before it. */
	const keep = (): KeptNightRecord => {
		const { session, step, aside } = keptOf(timeline);
		const { show, ...rest } = session;
		const other = show === opening.show ? null : show;
		const kept = { session: rest, show: other, step, aside, known };
		const seq = recent.at(-1)?.s ?? anchor?.seq ?? 0;
		const past = once(() => {
			const records = journal.recordsAfter(found?.seq ?? 0) as readonly NightRecord[];
			return foldFrom(first, upTo(records, seq), found?.past ?? null);
		});
		timeline = goOnAt(opening, kept, past);
		anchor = { seq, past };
		recent = recent.slice(-MOST_RECENT);
		const oldest = recent[0]?.s ?? 0;
		for (const s of before.keys()) if (s < oldest) before.delete(s);
		for (const s of wordsKnown.keys()) if (s < oldest) wordsKnown.delete(s);
		return keptNightRecord(kept);
	};

	for (const record of inOrder(journal.recordsAfter(found?.seq ?? 0))) take(record as NightRecord);
	journal.keepStates(keep);
	return {
		timeline: () => timeline,
		session: () => sessionOf(timeline),
		isGapBefore: () =>
			timeline.last === null && anchor !== null && !journal.isWhole({ after: 0, to: anchor.seq }),
		take,
		lastKnown: () => known,
		log: {
			*[Symbol.iterator]() {
				for (const { step, atMs, words, kinds, isTakenBack } of steps()) {
					for (let index = words.length - 1; index >= 0; index -= 1) {
						const said = words[index] ?? '';
						if (said === '') continue;
						const kind = kinds[index];
						const isOfSong = kind === 'song-began' || kind === 'song-ended';
						yield {
							atMs: atMs[index] ?? 0,
							words: said,
							isTakenBack,
							step,
							...(isOfSong && { isOfSong }),
						};
					}
				}
			},
		},
	};
}

function upTo(records: readonly NightRecord[], seq: number): readonly NightRecord[] {
	return records.slice(0, records.findLastIndex(({ s }) => s <= seq) + 1);
}

/** Notes what a record says about steps aside, where nothing later did; true when it says such a thing. */
function notesAside(record: NightRecord, aside: Map<RecordId, boolean>): boolean {
	const undone = undoneBy(record);
	for (const { step, isTakenBack } of undone) {
		if (!aside.has(step)) aside.set(step, isTakenBack);
	}
	return undone.length > 0;
}
