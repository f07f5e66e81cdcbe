// The state of a night as it is kept whole in its journal now and then, so that taking it up again
// does not take longer the longer it lasts. It holds facts only; the log's lines are made again from the
// records.

import * as z from 'zod/mini';
import type { Entry } from '../journal/entry.ts';
import { type JournalRecord, type RecordId, recordVersion } from '../journal/record.ts';
import type { Session } from '../session/session.ts';
import type { StepRecords } from '../session/timeline.ts';
import {
	boolean,
	byName,
	list,
	number,
	numberOrNull,
	text,
	textOrNull,
} from '../showfile/form-pieces.ts';
import type { Show } from '../showfile/show.ts';
import { keptShow, type ShowRecord, showForms, showRecord } from '../showfile/show-record.ts';
import type { LastKnown } from './night-clock.ts';

/** Raised whenever what is kept changes in shape or in meaning; another form is passed over. */
const FORM = 13;

/** A night to be gone on with. */
export type KeptNight = {
	readonly session: Omit<Session, 'show'>;
	/** The show in force when it is not the one that the night began with. */
	readonly show: Show | null;
	readonly step: RecordId | null;
	readonly aside: readonly StepRecords[];
	readonly known: LastKnown | null;
};

export type KeptNightRecord = Omit<KeptNight, 'show'> & {
	readonly form: typeof FORM;
	readonly show: ShowRecord | null;
};

/** What is written of it. */
export function keptNightRecord(kept: KeptNight): KeptNightRecord {
	return { form: FORM, ...kept, show: kept.show && showRecord(kept.show) };
}

/** What was written of a night; null where it is of another form or lacks anything that belongs to this one. */
export function keptNight(state: unknown): KeptNight | null {
	const read = KEPT.safeParse(state).data;
	if (read === undefined) return null;
	const { form: _, show: copy, ...kept } = read;
	const show = keptShow(copy);
	return copy !== null && show === null ? null : { ...kept, show };
}

/** Nothing more and nothing less: a field that is not known here belongs to another program. */
const exactly = z.strictObject;
const NOTHING = z.record(text, z.never());

const { PART, TUNING } = showForms();

const INSTRUMENT = exactly({
	value: z.enum(['racked', 'staged', 'inHands', 'onBench', 'out']),
	context: exactly({
		tuning: TUNING,
		capo: number,
		readyAtMs: numberOrNull,
		isToWipe: boolean,
		stringsDown: list(numberOrNull),
		faults: list(text),
		inHandsSinceMs: numberOrNull,
		backAtMs: numberOrNull,
		stringHours: numberOrNull,
	}),
});

const PLAYER = exactly({
	holds: textOrNull,
	sinceMs: numberOrNull,
	stayedMs: z.exactOptional(number),
	putDown: textOrNull,
	pack: textOrNull,
	correctable: z.nullable(
		exactly({ of: text, atMs: number, given: textOrNull, givenBefore: z.nullable(INSTRUMENT) }),
	),
	packSinceMs: z.exactOptional(number),
});

const BOARD = exactly({
	value: z.enum(['atRest', 'asCued', 'corrected']),
	context: exactly({
		pedals: byName(exactly({ on: boolean, settings: z.exactOptional(byName(text)) })),
		stuck: list(text),
	}),
});

const RUN = exactly({
	beganAtMs: number,
	endedAtMs: numberOrNull,
	how: z.nullable(z.enum(['played', 'cut-short', 'skipped'])),
});

const LIST_ITEM = z.discriminatedUnion('kind', [
	exactly({
		key: text,
		kind: z.literal('song'),
		song: text,
		gapSeconds: numberOrNull,
		isEncore: boolean,
		isPassedOver: boolean,
		isDropped: boolean,
		runs: list(RUN),
		above: byName(PART),
		tonight: byName(PART),
	}),
	exactly({ key: text, kind: z.literal('interval'), seconds: number }),
]);

const INCIDENT = exactly({
	id: text,
	atMs: number,
	kind: textOrNull,
	player: textOrNull,
	instrument: textOrNull,
	string: numberOrNull,
	pedal: textOrNull,
	standIn: textOrNull,
	silenceSeconds: numberOrNull,
	isOpen: boolean,
	words: list(text),
});

const FAULT = exactly({
	id: text,
	atMs: number,
	player: text,
	symptom: text,
	incident: text,
	instrument: textOrNull,
	pack: textOrNull,
	changed: list(text),
	doubted: list(text),
	found: byName(number),
	tests: list(
		exactly({ test: text, answer: z.enum(['sound', 'same', 'not-now']), isInSong: boolean }),
	),
	heardAtMs: numberOrNull,
	part: textOrNull,
	isOpen: boolean,
});

const SESSION = exactly({
	phase: exactly({
		value: z.enum(['before', 'song', 'changeover', 'interval', 'encore', 'over', 'packed']),
		context: NOTHING,
	}),
	list: list(LIST_ITEM),
	current: textOrNull,
	next: textOrNull,
	zeroAtMs: numberOrNull,
	song: z.nullable(exactly({ value: text, context: NOTHING })),
	phaseSinceMs: numberOrNull,
	intervalBeganMs: numberOrNull,
	instruments: byName(INSTRUMENT),
	players: byName(PLAYER),
	boards: byName(BOARD),
	settled: exactly({ item: textOrNull, players: byName(number) }),
	staying: exactly({ item: textOrNull, players: list(text) }),
	told: byName(z.nullable(exactly({ instrument: text, tuning: TUNING, capo: number }))),
	incidents: list(INCIDENT),
	faults: list(FAULT),
	suspectPacks: list(text),
	packChange: z.nullable(exactly({ player: text, from: textOrNull, to: text })),
	unmarked: z.nullable(
		exactly({
			of: text,
			instruments: list(
				exactly({
					player: text,
					instrument: text,
					tuning: textOrNull,
					capo: numberOrNull,
				}),
			),
		}),
	),
	packTimes: byName(exactly({ wornMs: number, sinceMs: numberOrNull })),
	freshBatteries: list(
		exactly({
			what: z.enum(['pack', 'pedal', 'part', 'instrument']),
			player: textOrNull,
			id: text,
			atMs: number,
		}),
	),
	stageCelsius: numberOrNull,
	readyMarks: byName(exactly({ atMs: number, celsius: numberOrNull })),
});

/** A record as any journal has it: what its entries say is for their readers. */
const RECORD = z.custom<JournalRecord<Entry>>(
	(value) => (value as Partial<JournalRecord> | null)?.v === recordVersion,
);

const KEPT = exactly({
	form: z.literal(FORM),
	session: SESSION,
	show: z.unknown(),
	step: textOrNull,
	aside: list(exactly({ done: RECORD, told: z.nullable(RECORD) })),
	known: z.nullable(
		exactly({
			atMs: number,
			upMs: number,
			started: z.nullable(exactly({ boot: text, anchorMs: number })),
		}),
	),
});
