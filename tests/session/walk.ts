// Random but sensible nights for the property tests: whatever the keys could ask, in any order.

import fc from 'fast-check';
import type { Entry, TonightPart } from '../../src/journal/entry.ts';
import { newRecord } from '../../src/journal/new-record.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import type { Command, HandOver } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { openSession } from '../../src/session/open-session.ts';
import {
	extend,
	openTimeline,
	puttableBack,
	sessionOf,
	type Timeline,
	takeableBack,
} from '../../src/session/timeline.ts';
import type { Show } from '../../src/showfile/show.ts';
import { namedTunings } from '../../src/tuning/tuning.ts';

import { otherShows } from './other-shows.ts';

export type Ask = Command | { readonly do: 'take-back' } | { readonly do: 'put-back' };

export const RUNS = Number(process.env.PROPERTY_RUNS ?? 60);

/** What could be asked of a night of this show. */
function asks(show: Show): fc.Arbitrary<Ask> {
	const instrument = fc.constantFrom(...show.instruments.map(({ id }) => id));
	const player = fc.constantFrom(...show.players.map(({ id }) => id));
	const song = fc.constantFrom(...show.songs.map(({ id }) => id));
	const handOver: fc.Arbitrary<HandOver> = fc.record({
		player,
		instrument: fc.option(instrument),
		tuning: fc.constant(null),
		capo: fc.integer({ min: 0, max: 3 }),
	});
	const handOvers = fc.uniqueArray(handOver, { maxLength: 3, selector: (one) => one.player });
	const key = fc.constantFrom(...show.set.map((_, index) => String(index + 1)), '90', '91');
	const place = fc.record({
		before: fc.option(key, { freq: 5 }),
		isEncore: fc.boolean(),
	});
	const simple = (...names: string[]) =>
		fc.constantFrom(...names).map((name) => ({ do: name }) as Ask);
	return fc.oneof(
		{ weight: 6, arbitrary: handOvers.map((all): Ask => ({ do: 'step', handOvers: all })) },
		{ weight: 1, arbitrary: handOvers.map((all): Ask => ({ do: 'finish-song', handOvers: all })) },
		{
			weight: 3,
			arbitrary: simple('step-back', 'go-to-next-song', 'go-to-previous-song'),
		},
		{ weight: 3, arbitrary: simple('take-back', 'put-back') },
		{ weight: 2, arbitrary: simple('make-all-ready', 'note-incident', 'play-on') },
		{
			weight: 1,
			arbitrary: fc
				.tuple(song, fc.constantFrom('before-next' as const, 'instead-of-next' as const))
				.map(([id, where]): Ask => ({ do: 'choose-next', song: id, place: where })),
		},
		{
			weight: 1,
			arbitrary: fc
				.record({ item: key, player, instrument, capo: fc.integer({ min: 0, max: 3 }) })
				.map((one): Ask => ({ do: 'hand-over', handOvers: [], stays: [one] })),
		},
		{
			weight: 1,
			arbitrary: fc.record({ item: key, player, instrument: fc.option(instrument) }).map(
				({ item, player: who, instrument: id }): Ask => ({
					do: 'name-tonight',
					item,
					player: who,
					part: id === null ? { kind: 'none' } : namedPart(show, id),
				}),
			),
		},
		{
			weight: 1,
			arbitrary: fc
				.constantFrom(...otherShows(show))
				.map((read): Ask => ({ do: 'read-show-again', show: read })),
		},
		{
			weight: 3,
			arbitrary: fc
				.tuple(key, place)
				.map(([item, there]): Ask => ({ do: 'move-song', item, ...there })),
		},
		{
			weight: 2,
			arbitrary: fc
				.tuple(song, place)
				.map(([id, there]): Ask => ({ do: 'insert-song', song: id, ...there })),
		},
		{
			weight: 2,
			arbitrary: fc
				.tuple(key, fc.constantFrom('drop-song', 'restore-song', 'play-in-encore'))
				.map(([item, name]) => ({ do: name, item }) as Ask),
		},
		{ weight: 2, arbitrary: handOvers.map((all): Ask => ({ do: 'hand-over', handOvers: all })) },
		{
			weight: 3,
			arbitrary: fc
				.tuple(player, fc.option(instrument))
				.map(([who, what]): Ask => ({ do: 'exchange', player: who, instrument: what })),
		},
		{ weight: 2, arbitrary: instrument.map((id): Ask => ({ do: 'report-break', instrument: id })) },
		{
			weight: 2,
			arbitrary: instrument.map(
				(id): Ask => ({ do: 'stand-in', instrument: id, tuning: null, capo: null }),
			),
		},
		{
			weight: 3,
			arbitrary: instrument.map((id): Ask => ({ do: 'make-ready', instrument: id, due: null })),
		},
		{ weight: 2, arbitrary: instrument.map((id): Ask => madeReadyAsInFile(show, id)) },
		...faultAsks(show).map((arbitrary) => ({ weight: 2, arbitrary })),
		...gearAsks(show).map((arbitrary) => ({ weight: 2, arbitrary })),
		{
			weight: 1,
			arbitrary: instrument.map((id): Ask => ({ do: 'put-aside', instrument: id, fault: null })),
		},
		{
			weight: 1,
			arbitrary: instrument.map((id): Ask => ({ do: 'put-aside', instrument: id, fault: 'jack' })),
		},
		{ weight: 1, arbitrary: instrument.map((id): Ask => ({ do: 'bring-back', instrument: id })) },
		{ weight: 1, arbitrary: instrument.map((id): Ask => ({ do: 'stage', instrument: id })) },
		{ weight: 1, arbitrary: fc.constant<Ask>({ do: 'doubt-all', celsius: 14 }) },
		{
			weight: 1,
			arbitrary: instrument.map((id): Ask => {
				const kind = show.instruments.find((one) => one.id === id)?.kind ?? 'electric-6';
				return {
					do: 'correct-instrument',
					instrument: id,
					tuning: namedTunings(kind)[0] ?? null,
					capo: null,
				};
			}),
		},
		{
			weight: 1,
			arbitrary: fc.constant<Ask>({
				do: 'describe-incident',
				string: 3,
				kind: null,
				words: 'at the saddle',
			}),
		},
	);
}

function madeReadyAsInFile(show: Show, id: string): Ask {
	const tuning = show.instruments.find((one) => one.id === id)?.tuning;
	if (tuning === undefined) throw new Error(`${id} is not in the show`);
	return { do: 'make-ready', instrument: id, due: { tuning, capo: 0 } };
}

/** What could be asked of a search for a fault, by the number of the record that may have begun one. */
function faultAsks(show: Show): readonly fc.Arbitrary<Ask>[] {
	const player = fc.constantFrom(...show.players.map(({ id }) => id));
	const instrument = fc.constantFrom(...show.instruments.map(({ id }) => id));
	const fault = fc.integer({ min: 1, max: 12 }).map((number) => `walk:${number}`);
	const cause = fc.record({
		part: fc.constantFrom('lead', 'P1'),
		is: fc.constantFrom('pack', 'instrument', 'other'),
	});
	const spare = instrument.map((id) => ({ instrument: id, tuning: null, capo: null }));
	return [
		player.map((who): Ask => ({ do: 'seek-fault', player: who, symptom: 'silent' })),
		fc
			.record({
				fault,
				test: fc.constant('swap-lead'),
				answer: fc.constantFrom('sound', 'same', 'not-now'),
				isHeard: fc.boolean(),
				change: fc.option(spare.map((one) => ({ kind: 'instrument', ...one }) as const)),
				cause: fc.option(cause),
			})
			.map((one): Ask => ({ do: 'test-fault', ...one })),
		fc.tuple(fault, spare).map(([id, one]): Ask => ({ do: 'take-spare', fault: id, ...one })),
		fc.tuple(fault, cause).map(([id, one]): Ask => ({ do: 'find-cause', fault: id, cause: one })),
		fault.map((id): Ask => ({ do: 'leave-fault', fault: id })),
	];
}

/** What could be asked of its boards and packs, where it has any. */
function gearAsks(show: Show): readonly fc.Arbitrary<Ask>[] {
	const player = fc.constantFrom(...show.players.map(({ id }) => id));
	const pedals = Object.entries(show.boards).flatMap(([id, board]) =>
		board.map((pedal) => ({ player: id, pedal: pedal.id })),
	);
	const pack = fc.constantFrom(...show.packs.map(({ id }) => id));
	return [
		...(pedals.length === 0
			? []
			: [
					fc
						.tuple(
							fc.constantFrom(...pedals),
							fc.constantFrom('correct-pedal', 'mark-pedal-stuck', 'free-pedal'),
						)
						.map(([one, name]) => ({ do: name, ...one }) as Ask),
				]),
		...(show.packs.length === 0
			? []
			: [
					fc
						.tuple(player, pack)
						.map(([who, what]): Ask => ({ do: 'change-pack', player: who, pack: what })),
					player.map((who): Ask => ({ do: 'suspect-pack', player: who })),
					pack.map((what): Ask => ({ do: 'clear-pack', pack: what })),
				]),
	];
}

function namedPart(show: Show, id: string): TonightPart {
	const tuning = show.instruments.find((one) => one.id === id)?.tuning;
	if (tuning === undefined) throw new Error(`${id} is not in this show`);
	return { kind: 'named', instrument: id, tuning, capo: 2, leave: null, pack: null };
}

export type Step = { readonly ask: Ask; readonly atMs: number };

/** A walk of some length: what is asked, and when. */
export function walks(show: Show, maxLength = 40): fc.Arbitrary<readonly Step[]> {
	return fc
		.array(fc.record({ ask: asks(show), waitMs: fc.integer({ min: 0, max: 200_000 }) }), {
			maxLength,
		})
		.map((all) => {
			let atMs = 1_000_000;
			return all.map(({ ask, waitMs }) => {
				atMs += waitMs;
				return { ask, atMs };
			});
		});
}

export type Walked = {
	readonly timeline: Timeline;
	readonly records: readonly JournalRecord<Entry>[];
};

/** The night after one more thing asked of it; the same when it was refused. */
export function walkOn(walked: Walked, { ask, atMs }: Step): Walked {
	const entries = entriesOf(walked.timeline, ask, atMs);
	if (entries.length === 0) return walked;
	const record = newRecord({
		...{ s: walked.records.length + 1, w: 'walk', e: entries },
		at: { wallMs: atMs, upMs: atMs },
		after: walked.records.at(-1) ?? null,
	});
	return { timeline: extend(walked.timeline, record), records: [...walked.records, record] };
}

function entriesOf(timeline: Timeline, ask: Ask, atMs: number): readonly Entry[] {
	if (ask.do === 'take-back' || ask.do === 'put-back') {
		const of = ask.do === 'take-back' ? takeableBack(timeline) : puttableBack(timeline);
		return of === null
			? []
			: [{ k: ask.do === 'take-back' ? 'taken-back' : 'put-back', at: atMs, of }];
	}
	const decision = decide(sessionOf(timeline), ask, atMs);
	return decision.ok ? decision.entries : [];
}

export function startWalk(show: Show): Walked {
	return { timeline: openTimeline(openSession(show)), records: [] };
}
