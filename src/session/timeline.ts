// Taking back and putting back. A night's past is a chain of steps, each with the session after it;
// nothing in the journal is erased, what was taken back merely stands aside.

import type { Entry } from '../journal/entry.ts';
import type { JournalRecord } from '../journal/record.ts';
import { apply } from './apply.ts';
import type { Session } from './session.ts';

type Step = {
	readonly record: JournalRecord<Entry>;
	readonly after: Session;
	readonly before: Step | null;
};

export type Timeline = {
	/** What the steps below begin with: the night's opening, or a state kept later on. */
	readonly opening: Session;
	/** Number of the step that led to the opening; null at the night's beginning, and where it cannot be taken back. */
	readonly openingStep: number | null;
	/** The timeline up to the opening, made when an earlier step is asked for; null where there is none. */
	readonly recall: (() => Timeline) | null;
	/** The last step that counts; null when there is none since the opening. */
	readonly last: Step | null;
	/** What was taken back and can be put back, the latest taken back first. */
	readonly aside: readonly JournalRecord<Entry>[];
};

/** What it takes to go on from a timeline without its steps; plain data. */
export type KeptTimeline = {
	readonly session: Session;
	readonly step: number | null;
	readonly aside: readonly JournalRecord<Entry>[];
};

/** The kinds of entry that are notes of the program about itself: nobody's step, so never taken back. */
const NOTES: ReadonlySet<string> = new Set(['night-opened', 'resumed', 'slept', 'clock-set']);

/** A timeline with nothing done yet. */
export function openTimeline(opening: Session): Timeline {
	return { opening, openingStep: null, recall: null, last: null, aside: [] };
}

/** A timeline going on from a kept one; `recall` gives that one with its steps, null where they are lost. */
export function goOnFrom(
	{ session, step, aside }: KeptTimeline,
	recall: (() => Timeline) | null,
): Timeline {
	return { opening: session, openingStep: step, recall, last: null, aside };
}

/** What has to be kept of a timeline so that it can be gone on from. */
export function keptOf(timeline: Timeline): KeptTimeline {
	return { session: sessionOf(timeline), step: takeableBack(timeline), aside: timeline.aside };
}

/** The session as it stands. */
export function sessionOf(timeline: Timeline): Session {
	return timeline.last?.after ?? timeline.opening;
}

/** The number of the record that taking back would take back; null at the start of the night. */
export function takeableBack(timeline: Timeline): number | null {
	return timeline.last?.record.s ?? timeline.openingStep;
}

/** The number of the record that putting back would put back. */
export function puttableBack(timeline: Timeline): number | null {
	return timeline.aside[0]?.s ?? null;
}

function withStep(timeline: Timeline, record: JournalRecord<Entry>): Timeline {
	const after = record.e.reduce(apply, sessionOf(timeline));
	return { ...timeline, last: { record, after, before: timeline.last } };
}

/** The timeline with the steps before its opening. */
function recalled({ recall, last, aside, ...timeline }: Timeline): Timeline {
	if (recall === null) return { ...timeline, recall, last, aside };
	const since: JournalRecord<Entry>[] = [];
	for (let step = last; step !== null; step = step.before) since.unshift(step.record);
	return { ...since.reduce(withStep, recall()), aside };
}

/** The timeline without one record, wherever it stands. */
function without(timeline: Timeline, seq: number): Timeline {
	const later: JournalRecord<Entry>[] = [];
	let step = timeline.last;
	while (step !== null && step.record.s !== seq) {
		later.unshift(step.record);
		step = step.before;
	}
	if (step === null) return timeline.recall ? without(recalled(timeline), seq) : timeline;
	const shortened = later.reduce(withStep, { ...timeline, last: step.before });
	return { ...shortened, aside: [step.record, ...timeline.aside] };
}

/** The timeline with one more record of the journal. */
export function extend(timeline: Timeline, record: JournalRecord<Entry>): Timeline {
	const [first] = record.e;
	if (first === undefined || NOTES.has(first.k)) return timeline;
	if (first.k === 'taken-back') return without(timeline, first.of);
	if (first.k === 'put-back') {
		const found = timeline.aside.find((one) => one.s === first.of);
		if (!found) return timeline;
		return { ...withStep(timeline, found), aside: timeline.aside.filter((one) => one !== found) };
	}
	return { ...withStep(timeline, record), aside: [] };
}

/** Every record but those that take back and put back, in order, with whether it was taken back. */
export function effectiveRecords(
	records: readonly JournalRecord<Entry>[],
): readonly { readonly record: JournalRecord<Entry>; readonly isTakenBack: boolean }[] {
	const aside = new Set<number>();
	for (const { e } of records) {
		for (const entry of e) {
			if (entry.k === 'taken-back') aside.add(entry.of);
			if (entry.k === 'put-back') aside.delete(entry.of);
		}
	}
	return records
		.filter(({ e }) => !e.some((entry) => entry.k === 'taken-back' || entry.k === 'put-back'))
		.map((record) => ({ record, isTakenBack: aside.has(record.s) }));
}
