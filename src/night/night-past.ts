// What happened so far tonight: the steps, and the log in words. Reads as little of the journal as it
// can: a night taken up again goes on from the last state kept whole, and older steps are looked at
// only when somebody asks for them.

import { once } from '../base/once.ts';
import type { Entry } from '../journal/entry.ts';
import type { NightJournal } from '../journal/night-journal.ts';
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
import type { KeptNight, KeptStep } from './kept-night.ts';
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

/** Enough for the largest screen that shows the log beside the stage view. */
const MOST_KEPT_STEPS = 64;

/** From where the steps are in memory; what was before is folded again when somebody asks for it. */
type Anchor = { readonly seq: number; readonly kept: KeptNight | null; readonly past: () => Fold };

/**
 * The past that the journal holds, from now on kept whole in it every now and then. With each state
 * kept the steps before it leave the memory, which so does not grow with the night.
 */
export function openPast(opening: Session, journal: NightJournal): NightPast {
	const found = keptPoint(opening, journal, journal.checkpoint);
	const since: NightRecord[] = [];
	const before = new Map<number, Session>();
	const wordsKnown = new Map<number, readonly string[]>();

	/** What was kept stands from now on for the steps before it. */
	function anchorAt(to: Anchor & { readonly kept: KeptNight }): void {
		anchor = to;
		since.length = 0;
		before.clear();
		wordsKnown.clear();
		for (const step of to.kept.log) wordsKnown.set(step.s, step.words);
	}

	const first = found?.timeline() ?? openTimeline(opening);
	let anchor: Anchor = { seq: 0, kept: null, past: () => foldFrom(first, [], null) };
	if (found) anchorAt(found);
	let timeline = first;
	let known = found?.kept.known ?? null;

	function take(record: NightRecord): void {
		since.push(record);
		before.set(record.s, sessionOf(timeline));
		timeline = extend(timeline, record);
		known = lastKnown(known, record);
	}

	/** The session before a record. */
	function sessionBefore({ s }: NightRecord): Session {
		const near = before.get(s);
		if (near) return near;
		for (let past: Fold | null = anchor.past(); past; past = past.earlier?.() ?? null) {
			const session = past.before.get(s);
			if (session) return session;
		}
		return opening;
	}

	/** A record's entries in words, made once, with what was known when it was written. */
	function wordsOf(record: NightRecord): readonly string[] {
		const ready = wordsKnown.get(record.s);
		if (ready) return ready;
		const session = sessionBefore(record);
		const words = record.e.map((entry) => entryWords(entry, session.show, session));
		wordsKnown.set(record.s, words);
		return words;
	}

	/** All steps that can be taken back or were, newest first. */
	function* steps(): Generator<KeptStep> {
		const aside = new Map<RecordId, boolean>();
		const stepOf = (record: NightRecord): KeptStep => ({
			s: record.s,
			step: stepOfRecord(record),
			atMs: record.e.map(({ at }) => at),
			words: wordsOf(record),
			isTakenBack: aside.get(stepOfRecord(record)) === true,
		});
		for (let index = since.length - 1; index >= 0; index -= 1) {
			const record = since[index] as NightRecord;
			if (!notesAside(record, aside)) yield stepOf(record);
		}
		const { kept, seq } = anchor;
		if (!kept) return;
		for (const step of kept.log) {
			yield { ...step, isTakenBack: aside.get(step.step) ?? step.isTakenBack };
		}
		if (kept.log.length < MOST_KEPT_STEPS) return;
		const oldest = kept.log.at(-1)?.s ?? 0;
		const earlier = upTo(journal.records() as readonly NightRecord[], seq);
		for (let index = earlier.length - 1; index >= 0; index -= 1) {
			const record = earlier[index] as NightRecord;
			if (!notesAside(record, aside) && record.s < oldest) yield stepOf(record);
		}
	}

	const keep = (): KeptNight => {
		const { session, step, aside } = keptOf(timeline);
		const { show, ...rest } = session;
		const kept: KeptNight = {
			form: 8,
			session: rest,
			show: show === opening.show ? null : show,
			step,
			aside,
			log: [...steps().take(MOST_KEPT_STEPS)],
			known,
		};
		const seq = since.at(-1)?.s ?? anchor.seq;
		const past = once(() => {
			const records = journal.recordsAfter(found?.seq ?? 0) as readonly NightRecord[];
			return foldFrom(first, upTo(records, seq), found?.past ?? null);
		});
		timeline = goOnAt(opening, kept, past);
		anchorAt({ seq, kept, past });
		return kept;
	};

	for (const record of inOrder(journal.recordsAfter(found?.seq ?? 0))) take(record as NightRecord);
	journal.keepStates(keep);
	return {
		timeline: () => timeline,
		session: () => sessionOf(timeline),
		isGapBefore: () =>
			timeline.last === null && anchor.seq > 0 && !journal.isWhole({ after: 0, to: anchor.seq }),
		take,
		lastKnown: () => known,
		log: {
			*[Symbol.iterator]() {
				for (const { step, atMs, words, isTakenBack } of steps()) {
					for (let index = words.length - 1; index >= 0; index -= 1) {
						const said = words[index] ?? '';
						if (said === '') continue;
						yield { atMs: atMs[index] ?? 0, words: said, isTakenBack, step };
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
