// The order of a night's records is one of the set of them: two writers' records, whichever come first.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Entry } from '../../src/journal/entry.ts';
import { newRecord } from '../../src/journal/new-record.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { inOrder, nextTime } from '../../src/journal/record-order.ts';
import { openSession } from '../../src/session/open-session.ts';
import { extend, openTimeline, sessionOf } from '../../src/session/timeline.ts';
import { smallShow } from '../report/small-show.ts';

type NightRecord = JournalRecord<Entry>;

const show = smallShow();
const [first, second] = show.set.flatMap((item, place) =>
	item.kind === 'song' ? [String(place + 1)] : [],
);

/** What one technician's laptop writes, one after the other, each knowing its own alone. */
function written(w: string, ...steps: readonly (readonly [ms: number, entry: Entry])[]) {
	const all: NightRecord[] = [];
	for (const [wallMs, entry] of steps) {
		const at = { wallMs, upMs: wallMs };
		all.push(newRecord({ s: all.length + 1, w, e: [entry], at, after: all.at(-1) ?? null }));
	}
	return all;
}

const ONE = written(
	'one.a',
	[1000, { k: 'night-opened', at: 1000, boot: 'b' }],
	[2000, { k: 'song-began', at: 2000, item: first ?? '' }],
	[3000, { k: 'string-broke', at: 3000, instrument: 'A1', player: null }],
	[4000, { k: 'song-ended', at: 4000, item: first ?? '', how: 'played' }],
);
const OTHER = written(
	'other.b',
	[1500, { k: 'made-ready', at: 1500, instrument: 'A2' }],
	[3000, { k: 'incident-noted', at: 3000 }],
	[
		3500,
		{ k: 'song-inserted', at: 3500, song: show.songs[0]?.id ?? '', before: null, isEncore: false },
	],
	[4500, { k: 'song-began', at: 4500, item: second ?? '' }],
);

/** Every way in which the two can arrive, each in its own order. */
function* interleaved<T>(one: readonly T[], other: readonly T[]): Generator<readonly T[]> {
	if (one.length === 0 || other.length === 0) {
		yield [...one, ...other];
		return;
	}
	for (const rest of interleaved(one.slice(1), other)) yield [one[0] as T, ...rest];
	for (const rest of interleaved(one, other.slice(1))) yield [other[0] as T, ...rest];
}

const folded = (records: readonly NightRecord[]) =>
	sessionOf(inOrder(records).reduce(extend, openTimeline(openSession(show))));

test('in all 70 ways in which two times four can come, the night is the same', () => {
	const all = [...interleaved(ONE, OTHER)];
	expect(all).toHaveLength(70);
	const session = folded([...ONE, ...OTHER]);
	for (const arrived of all) expect(folded(arrived)).toEqual(session);
	// Incidents of two laptops are two, and each list item has a key of its own.
	expect(session.incidents.map(({ id }) => id)).toEqual(['one.a:3', 'other.b:2']);
	expect(session.list.map(({ key }) => key)).toContain('other.b:3');
	expect(session.current).toBe(second);
});

test('whatever order they come in, they stand in one', () => {
	fc.assert(
		fc.property(fc.shuffledSubarray([...ONE, ...OTHER], { minLength: 8 }), (records) => {
			expect(inOrder(records)).toEqual(inOrder([...ONE, ...OTHER]));
		}),
	);
});

test('what knows of another comes after it, be the clock it was written by behind', () => {
	const after = ONE.at(-1) ?? null;
	const late = newRecord({
		...{ s: 1, w: 'behind.c', e: [{ k: 'memo-written', at: 1, words: 'late' } as const] },
		at: { wallMs: 10, upMs: 10 },
		after,
	});
	expect(late).toMatchObject({ h: [4000, 1], p: ['one.a:4'] });
	expect(inOrder([late, ...ONE]).at(-1)).toBe(late);
});

test('at one time the writer decides, and of one writer the number', () => {
	const [record] = ONE;
	const at = (w: string, s: number) => ({ ...record!, h: [1000, 0] as const, w, s });
	const wanted = [at('a', 1), at('a', 2), at('b', 1), at('b', 3)];
	expect(inOrder(wanted.toReversed())).toEqual(wanted);
	expect(inOrder([2, 0, 3, 1].map((place) => wanted[place]!))).toEqual(wanted);
});

test('what stands in order is given back as it is, not sorted anew', () => {
	expect(inOrder(ONE)).toBe(ONE);
});

// A hybrid logical clock: the later of the two, and counted on where that is not the wall's (Kulkarni and
// others, Logical Physical Clocks, 2014, from memory).
test.each([
	['the wall is ahead', [1000, 4], 1001.9, [1001, 0]],
	['the wall stands', [1000, 4], 1000, [1000, 5]],
	['the wall went back', [1000, 4], 10, [1000, 5]],
	['nothing came before', null, 10.5, [10, 0]],
] as const)('the next time when %s', (_, last, wallMs, next) => {
	expect(nextTime(last, wallMs)).toEqual(next);
});
