// A night taken up again from a state that was kept whole is the night that was: as it stands, in its
// log, in its clock, and however far steps are taken back and put back.

import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/journal/entry.ts';
import { memoryJournal } from '../../src/journal/memory-journal.ts';
import { recordBeside } from '../../src/journal/new-record.ts';
import type { NightJournal } from '../../src/journal/night-journal.ts';
import type { Checkpoint, JournalRecord } from '../../src/journal/record.ts';
import { type NightPast, openPast } from '../../src/night/night-past.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import { puttableBack, takeableBack } from '../../src/session/timeline.ts';
import { sampleHeader } from '../journal/sample-journal.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { RUNS, startWalk, walkOn, walks } from '../session/walk.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));
const opening = openSession(show);

type Records = readonly JournalRecord<Entry>[];
type Opened = { readonly journal: NightJournal; readonly past: NightPast };

const throughJson = <Value>(value: Value): Value => JSON.parse(JSON.stringify(value));

function opened(
	records: Records,
	checkpoint: Checkpoint | null,
	earlier: readonly Checkpoint[] = [],
): Opened {
	const journal = memoryJournal(sampleHeader(), { records, checkpoint, earlier });
	return { journal, past: openPast(opening, journal) };
}

/** What would be kept after these records. */
function keptAfter(records: Records, earlier: Checkpoint | null = null): Checkpoint {
	const made: (() => unknown)[] = [];
	const journal = memoryJournal(sampleHeader(), { records, checkpoint: earlier });
	openPast(opening, { ...journal, keepStates: (make) => made.push(make) });
	return throughJson({ seq: records.length, state: made[0]?.() });
}

function askedOf(past: NightPast) {
	return {
		session: past.session(),
		log: [...past.log],
		lastKnown: past.lastKnown(),
		takeable: takeableBack(past.timeline()),
		puttable: puttableBack(past.timeline()),
	};
}

/** One more record that takes back or puts back; false when there is nothing to. */
function move({ journal, past }: Opened, which: 'taken-back' | 'put-back'): boolean {
	const timeline = past.timeline();
	const of = which === 'taken-back' ? takeableBack(timeline) : puttableBack(timeline);
	if (of === null) return false;
	const entry: Entry = { k: which, at: 3_000_000_000, of };
	past.take(journal.append([entry], { wallMs: 1, upMs: 1 }));
	return true;
}

const nights = fc.tuple(walks(show, 120), fc.nat(), fc.nat());

/** The number of a record by its identity; 0 for none. */
const numberOf = (id: string): number => Number(id.split(':')[1] ?? 0);

describe('a night gone on with from a kept state', () => {
	test('stands, reads and undoes like the night that was', () => {
		fc.assert(
			fc.property(nights, ([steps, some, other]) => {
				const { records } = steps.reduce(walkOn, startWalk(show));
				const [cut = 0, second = 0] = [some, other]
					.map((one) => one % (records.length + 1))
					.toSorted((a, b) => a - b);
				const first = keptAfter(records.slice(0, cut));
				const kept = keptAfter(records.slice(0, second), first);
				const whole = opened(records, null);
				const resumed = opened(throughJson(records), kept);
				expect(askedOf(resumed.past)).toEqual(askedOf(whole.past));
				for (const which of ['taken-back', 'put-back', 'taken-back'] as const) {
					for (let isMoved = true; isMoved; ) {
						isMoved = move(whole, which);
						expect(move(resumed, which)).toBe(isMoved);
						expect(resumed.past.session()).toEqual(whole.past.session());
					}
					expect(askedOf(resumed.past)).toEqual(askedOf(whole.past));
					expect(resumed.past.isGapBefore()).toBe(false);
				}
			}),
			{ numRuns: RUNS },
		);
	});

	test('takes back in the same way what comes after damage that an earlier kept state covers', () => {
		fc.assert(
			fc.property(walks(show, 120), fc.tuple(fc.nat(), fc.nat(), fc.nat()), (steps, places) => {
				const { records } = steps.reduce(walkOn, startWalk(show));
				const [lost = 0, cut = 0, second = 0] = places
					.map((one) => one % (records.length + 1))
					.toSorted((a, b) => a - b);
				// Whoever took back something from before the damage went beyond it already.
				const reach = records
					.slice(cut)
					.flatMap(({ e }) => e.flatMap((one) => ('of' in one ? [numberOf(one.of ?? '')] : [])));
				fc.pre(reach.every((of) => of > cut));
				const first = keptAfter(records.slice(0, cut));
				const kept = keptAfter(records.slice(0, second), first);
				const left = records.filter(({ s }) => s !== lost);
				const whole = opened(records, null);
				const resumed = opened(throughJson(left), kept, [first]);
				const takeable = () => numberOf(takeableBack(resumed.past.timeline()) ?? '');
				expect(resumed.past.session()).toEqual(whole.past.session());
				while (takeable() > cut) {
					expect(takeableBack(whole.past.timeline())).toBe(takeableBack(resumed.past.timeline()));
					move(resumed, 'taken-back');
					move(whole, 'taken-back');
					expect(resumed.past.session()).toEqual(whole.past.session());
				}
			}),
			{ numRuns: RUNS },
		);
	});

	test('takes back from before a kept state what is left of it, as if the rest had never been', () => {
		const night = ['1', '2', '3', '4'].map(
			(instrument, index): Entry => ({ k: 'made-ready', at: index, instrument: `A${instrument}` }),
		);
		const records = night.map((entry, index): JournalRecord<Entry> => {
			const at = { wallMs: index, upMs: index };
			return recordBeside({ s: index + 1, w: 'writer', e: [entry], at });
		});
		const kept = keptAfter(records.slice(0, 3));
		const { past, journal } = opened(
			records.filter(({ s }) => s !== 2),
			kept,
		);
		const ready = () =>
			Object.entries(past.session().instruments).flatMap(([id, { context }]) =>
				context.readyAtMs === null ? [] : [id],
			);
		expect(ready()).toEqual(['A1', 'A2', 'A3', 'A4']);
		expect(move({ past, journal }, 'taken-back')).toBe(true);
		expect(ready()).toEqual(['A1', 'A2', 'A3']);
		expect(past.isGapBefore()).toBe(true);
		expect(move({ past, journal }, 'taken-back')).toBe(true);
		expect(ready()).toEqual(['A1']);
		expect(past.isGapBefore()).toBe(false);
		expect(move({ past, journal }, 'put-back')).toBe(true);
		expect(ready()).toEqual(['A1', 'A3']);
	});

	test('is the same while it is kept now and then, and the steps before leave the memory', () => {
		fc.assert(
			fc.property(walks(show, 120), fc.integer({ min: 1, max: 30 }), (steps, every) => {
				const { records } = steps.reduce(walkOn, startWalk(show));
				const made: (() => unknown)[] = [];
				const journal = memoryJournal(sampleHeader());
				const live = {
					journal,
					past: openPast(opening, { ...journal, keepStates: (make) => made.push(make) }),
				};
				const whole = opened([], null);
				for (const [index, { e, t, m }] of records.entries()) {
					if (index % every === every - 1) made[0]?.();
					for (const one of [live, whole]) {
						one.past.take(one.journal.append(e, { wallMs: t, upMs: m }) as JournalRecord<Entry>);
					}
					expect(live.past.session()).toEqual(whole.past.session());
				}
				expect(askedOf(live.past)).toEqual(askedOf(whole.past));
				for (const which of ['taken-back', 'put-back'] as const) {
					for (let isMoved = true; isMoved; ) {
						isMoved = move(whole, which);
						expect(move(live, which)).toBe(isMoved);
						expect(live.past.session()).toEqual(whole.past.session());
					}
				}
				made[0]?.();
				expect(askedOf(live.past)).toEqual(askedOf(whole.past));
			}),
			{ numRuns: RUNS },
		);
	});

	test('looks at no earlier record until somebody asks for it, and then no further back than it must', () => {
		const memo = (s: number): JournalRecord<Entry> =>
			recordBeside({
				...{ s, w: 'writer', at: { wallMs: s, upMs: s } },
				e: [{ k: 'memo-written', at: s * 1000, words: `memo ${s}` }],
			});
		const records = Array.from({ length: 300 }, (_, index) => memo(index + 1));
		const first = keptAfter(records.slice(0, 100));
		const checkpoint = keptAfter(records.slice(0, 200), first);
		const journal = memoryJournal(sampleHeader(), { records, checkpoint, earlier: [first] });
		let earliest = records.length;
		const past = openPast(opening, {
			...journal,
			records: () => {
				earliest = 0;
				return journal.records();
			},
			recordsAfter: (seq) => {
				earliest = Math.min(earliest, seq);
				return journal.recordsAfter(seq);
			},
		});
		const newest = past.log[Symbol.iterator]();
		const read = (most: number) => Array.from({ length: most }, () => newest.next());
		read(100);
		expect(earliest).toBe(200);
		read(100);
		expect(earliest).toBe(100);
		expect([...past.log].map(({ words }) => words)).toEqual(
			records.map(({ s }) => `memo: memo ${s}`).toReversed(),
		);
		expect(earliest).toBe(0);
	});

	test('what is kept is all that it takes to go on from there', () => {
		fc.assert(
			fc.property(walks(show, 120), (steps) => {
				const { records } = steps.reduce(walkOn, startWalk(show));
				const { past } = opened([], keptAfter(records));
				expect(past.session()).toEqual(opened(records, null).past.session());
			}),
			{ numRuns: RUNS },
		);
	});

	test('what is kept holds none of the sentences that the log says', () => {
		fc.assert(
			fc.property(walks(show, 120), (steps) => {
				const { records } = steps.reduce(walkOn, startWalk(show));
				const kept = JSON.stringify(keptAfter(records).state);
				for (const { words } of opened(records, null).past.log) expect(kept).not.toContain(words);
			}),
			{ numRuns: RUNS },
		);
	});

	test('a kept state of another form is passed over', () => {
		const { records } = fc
			.sample(walks(show, 60), { numRuns: 1, seed: 7 })
			.flat()
			.reduce(walkOn, startWalk(show));
		const { seq, state } = keptAfter(records);
		const { session } = state as { session: Session };
		const { next: _, ...fewer } = session;
		const statedWith = (other: object) => ({ ...(state as object), ...other });
		const [player, { pack: __, ...lacking }] = Object.entries(session.players)[0]!;
		for (const other of [
			statedWith({ form: 8 }),
			statedWith({ session: fewer }),
			statedWith({ session: { ...session, later: 0 } }),
			statedWith({ session: { ...session, players: { ...session.players, [player]: lacking } } }),
			statedWith({ session: { ...session, current: 4 } }),
			statedWith({ show: { v: 99, show: {} } }),
			statedWith({ aside: [{ done: { v: 99 }, told: null }] }),
			null,
			'kept',
		]) {
			const { past } = opened(records, { seq, state: other });
			expect(askedOf(past)).toEqual(askedOf(opened(records, null).past));
		}
	});

	// What is kept is read by later versions of the program: whoever changes its shape or meaning raises its form.
	test('the form has not changed', () => {
		const { state } = keptAfter([]) as { state: Record<string, Record<string, unknown>> };
		expect(state.form).toBe(13);
		expect(Object.keys(state)).toEqual(['form', 'session', 'show', 'step', 'aside', 'known']);
		const { session = {} } = state;
		const players = session.players as Readonly<Record<string, object>>;
		expect(Object.keys(session).join(' ')).toBe(
			'phase list current next zeroAtMs song phaseSinceMs intervalBeganMs instruments players boards settled staying told incidents faults suspectPacks packChange unmarked packTimes freshBatteries stageCelsius readyMarks',
		);
		expect(Object.keys(Object.values(players)[0] ?? {}).join(' ')).toBe(
			'holds sinceMs putDown pack correctable',
		);
	});
});
