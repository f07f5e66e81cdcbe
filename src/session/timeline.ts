// Taking back and putting back. A night's past is a chain of steps, each with the session after it;
// nothing in the journal is erased, what was taken back merely stands aside.

import type { Entry } from '../journal/entry.ts';
import type { JournalRecord, RecordId } from '../journal/record.ts';
import { applyAll } from './apply.ts';
import type { Session } from './session.ts';

type NightRecord = JournalRecord<Entry>;

/** What is taken back and put back together: what was done, and what people were told by the plan that it led to. */
export type StepRecords = { readonly done: NightRecord; readonly told: NightRecord | null };

type Step = StepRecords & {
	readonly after: Session;
	readonly before: Step | null;
};

export type Timeline = {
	/** What the steps below begin with: the night's opening, or a state kept later on. */
	readonly opening: Session;
	/** The step that led to the opening; null at the night's beginning, and where it cannot be taken back. */
	readonly openingStep: RecordId | null;
	/** The timeline up to the opening, made when an earlier step is asked for; null where there is none. */
	readonly recall: (() => Timeline) | null;
	/** The last step that counts; null when there is none since the opening. */
	readonly last: Step | null;
	/** What was taken back and can be put back, the latest taken back first. */
	readonly aside: readonly StepRecords[];
};

/** What it takes to go on from a timeline without its steps; plain data. */
export type KeptTimeline = {
	readonly session: Session;
	readonly step: RecordId | null;
	readonly aside: readonly StepRecords[];
};

/** The kinds of entry that are notes of the program about itself: nobody's step, so never taken back. */
export const NOTES: ReadonlySet<string> = new Set([
	'night-opened',
	'resumed',
	'slept',
	'clock-set',
]);

/** A timeline with nothing done yet. */
export function openTimeline(opening: Session): Timeline {
	return { opening, openingStep: null, recall: null, last: null, aside: [] };
}

/** A timeline going on from a kept one; `recall` gives that one with its steps. */
export function goOnFrom({ session, step, aside }: KeptTimeline, recall: () => Timeline): Timeline {
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

/** The step that taking back would take back; null at the start of the night. */
export function takeableBack(timeline: Timeline): RecordId | null {
	return timeline.last?.done.id ?? timeline.openingStep;
}

/** The step that putting back would put back. */
export function puttableBack(timeline: Timeline): RecordId | null {
	return timeline.aside[0]?.done.id ?? null;
}

/** The session after a record. */
function applyRecord(session: Session, { e, id }: NightRecord): Session {
	return applyAll(session, e, id);
}

function withStep(timeline: Timeline, { done, told }: StepRecords): Timeline {
	const after = applyRecord(sessionOf(timeline), done);
	const step = { done, told: null, after, before: timeline.last };
	return told === null
		? { ...timeline, last: step }
		: withTold({ ...timeline, last: step }, { step, told });
}

/** What was told is of the step before it. */
function withTold(
	timeline: Timeline,
	{ step, told }: { readonly step: Step; readonly told: NightRecord },
): Timeline {
	return { ...timeline, last: { ...step, told, after: applyRecord(step.after, told) } };
}

/** The timeline with the steps before its opening. */
function recalled({ recall, last, aside, ...timeline }: Timeline): Timeline {
	if (recall === null) return { ...timeline, recall, last, aside };
	const since: StepRecords[] = [];
	for (let step = last; step !== null; step = step.before) since.unshift(step);
	return { ...since.reduce(withStep, recall()), aside };
}

/** The timeline without one step, wherever it stands. */
function without(timeline: Timeline, id: RecordId): Timeline {
	const later: StepRecords[] = [];
	let step = timeline.last;
	while (step !== null && step.done.id !== id) {
		later.unshift(step);
		step = step.before;
	}
	if (step === null) return timeline.recall ? without(recalled(timeline), id) : timeline;
	const shortened = later.reduce(withStep, { ...timeline, last: step.before });
	const { done, told } = step;
	return { ...shortened, aside: [{ done, told }, ...timeline.aside] };
}

/** The timeline with one more record of the journal. */
export function extend(timeline: Timeline, record: NightRecord): Timeline {
	const [first] = record.e;
	if (first === undefined || NOTES.has(first.k)) return timeline;
	if (first.k === 'taken-back') return without(timeline, first.of);
	if (first.k === 'put-back') {
		const found = timeline.aside.find(({ done }) => done.id === first.of);
		if (!found) return timeline;
		return { ...withStep(timeline, found), aside: timeline.aside.filter((one) => one !== found) };
	}
	const told = toldOf(record);
	if (told === null) return { ...withStep(timeline, { done: record, told: null }), aside: [] };
	const { last } = timeline;
	if (last?.done.id === told) return withTold(timeline, { step: last, told: record });
	// Of a state kept between the two nothing is lost: it is told once the step before the state is.
	return timeline.openingStep === told && last === null
		? {
				...timeline,
				opening: applyRecord(timeline.opening, record),
				recall: recallWith(timeline, record),
			}
		: timeline;
}

function recallWith({ recall }: Timeline, told: NightRecord): Timeline['recall'] {
	return recall && (() => extend(recall(), told));
}

/** The step whose telling this record is; null for what is a step itself. */
function toldOf({ e }: NightRecord): RecordId | null {
	const [first] = e;
	return first?.k === 'plan-told' ? (first.of ?? null) : null;
}

/** The step that a record is, or is told of. */
export function stepOfRecord(record: NightRecord): RecordId {
	return toldOf(record) ?? record.id;
}

/** What a record takes back or puts back, the only reading of it; none of a step. */
export function undoneBy({
	e,
}: JournalRecord): readonly { readonly step: RecordId; readonly isTakenBack: boolean }[] {
	return (e as readonly Entry[]).flatMap((entry) =>
		entry.k === 'taken-back' || entry.k === 'put-back'
			? [{ step: entry.of, isTakenBack: entry.k === 'taken-back' }]
			: [],
	);
}

/** Which steps are taken back by these records, oldest first. */
export function takenBack(records: readonly JournalRecord[]): ReadonlySet<RecordId> {
	const aside = new Set<RecordId>();
	for (const { step, isTakenBack } of records.flatMap(undoneBy)) {
		if (isTakenBack) aside.add(step);
		else aside.delete(step);
	}
	return aside;
}

/** Every record but those that take back and put back, in order, with whether it was taken back, by itself or with its step. */
export function effectiveRecords(
	records: readonly NightRecord[],
): readonly { readonly record: NightRecord; readonly isTakenBack: boolean }[] {
	const aside = takenBack(records);
	return records
		.filter((record) => undoneBy(record).length === 0)
		.map((record) => ({ record, isTakenBack: aside.has(stepOfRecord(record)) }));
}
