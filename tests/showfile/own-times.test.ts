// A technician's own times: they stand in for the built-in ones of contract and table, never for what a
// show file says, and taking them up or leaving them off again is always the same show.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
	fileSeconds,
	OWN_TIMES,
	ownTimesWith,
	usableTimes,
	withOwnTimes,
} from '../../src/showfile/own-times.ts';
import type { Show } from '../../src/showfile/show.ts';
import { ownTimeWords, unusableTimeWords } from '../../src/words/own-times.ts';
import { showFrom } from './show-files.ts';

const show = showFrom(`format: rackside/1
times: {all: {walk: 8s}, bass-4: {touch-up: 30s}}
instruments:
  - {id: A1, slot: "1", kind: electric-6, tuning: E standard}
  - {id: A2, slot: "2", kind: electric-6, tuning: E standard, bridge: floating, times: {touch-up: 20s, capo: 10s}}
  - {id: C1, slot: "3", kind: bass-4, tuning: E standard}
songs: [{id: one}]
set: [one]
`);
const timesOf = (of: Show, id: string) => of.instruments.find((one) => one.id === id)?.times;
const nameOf = (key: string) => OWN_TIMES.find((one) => one.name === key)!;

describe('own times', () => {
	test('stand in for the built-in ones, and a change of tuning follows the touch-up', () => {
		const mine = withOwnTimes(show, { capo: 6, 'touch-up.electric-6': 40, 'one-string-more': 25 });
		expect(timesOf(mine, 'A1')).toEqual({
			...timesOf(show, 'A1'),
			touchUp: 40,
			oneString: 65,
			twoStrings: 70,
			allStrings: 80,
			otherTuning: 115,
			capo: 6,
		});
	});

	test('come after whatever the show file says, even where that is what is built in', () => {
		const own = { capo: 6, walk: 4, 'touch-up.electric-6': 40, 'touch-up.bass-4': 50 };
		const mine = withOwnTimes(show, { ...own, 'one-string-more': 25 });
		expect(timesOf(mine, 'A1')).toMatchObject({ walk: 8 });
		expect(timesOf(mine, 'A2')).toMatchObject({ capo: 10, touchUp: 20, oneString: 45, walk: 8 });
		expect(timesOf(mine, 'C1')).toMatchObject({ capo: 6, touchUp: 30, oneString: 55 });
	});

	test('of a restring go by the bridge', () => {
		const mine = withOwnTimes(show, { restring: 240, 'restring-floating': 600 });
		expect([timesOf(mine, 'A1')?.restring, timesOf(mine, 'A2')?.restring]).toEqual([240, 600]);
	});

	test('can all be set and taken back, which gives the show as it was read', () => {
		const own = fc.dictionary(
			fc.constantFrom(...OWN_TIMES.map(({ name }) => name)),
			fc.nat({ max: 86_400 }),
		);
		fc.assert(
			fc.property(own, own, (first, second) => {
				const [one, other] = [usableTimes(first).times, usableTimes(second).times];
				const read = withOwnTimes(show, one);
				expect(JSON.stringify(withOwnTimes(withOwnTimes(read, other), one))).toBe(
					JSON.stringify(read),
				);
				expect(JSON.stringify(withOwnTimes(read, {}))).toBe(JSON.stringify(show));
			}),
		);
	});

	test('leave alone what a night of an earlier version was given by its file', () => {
		const instruments = show.instruments.map(({ givenTimes: _, ...one }) => one);
		const mine = withOwnTimes({ ...show, instruments }, { 'touch-up.electric-6': 40 });
		expect(timesOf(mine, 'A2')).toEqual(timesOf(show, 'A2'));
		expect(timesOf(mine, 'A1')?.touchUp).toBe(40);
	});

	test('know what the file says of each instrument that they concern', () => {
		expect(fileSeconds(show, nameOf('touch-up.electric-6'))).toEqual([null, 20]);
		expect(fileSeconds(show, nameOf('touch-up.bass-4'))).toEqual([30]);
		expect(fileSeconds(show, nameOf('restring-floating'))).toEqual([null]);
		expect(fileSeconds(show, nameOf('walk'))).toEqual([8, 8, 8]);
	});

	test('kept that cannot be used are told, and the built-in ones used', () => {
		const kept = { capo: 'fast', walk: '6s', wipe: null, restring: 4.5, hope: 5 };
		const { times, problems } = usableTimes({ ...kept, 'hand-over': -1, 'further-string': '1:30' });
		expect({ times, said: problems.map(unusableTimeWords) }).toEqual({
			times: { walk: 6, 'further-string': 90 },
			said: [
				expect.stringMatching(/^Your time for hand-over cannot be used: -1 is not a time in /),
				expect.stringMatching(
					/^Your time for capo .*"fast" is not .*1:30\. The built-in one is\.$/,
				),
				expect.stringMatching(/^Your time for wipe .*null/),
				expect.stringMatching(/^Your time for restring .*4\.5/),
				'Your time for hope is for no work that is known.',
			],
		});
	});

	test('whatever is kept never throws', () => {
		fc.assert(
			fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (kept) => {
				expect(withOwnTimes(show, usableTimes(kept).times).instruments).toHaveLength(3);
			}),
		);
	});

	test('are told in words', () => {
		expect(ownTimeWords('capo', 6)).toBe('capo: 0:06');
		expect(ownTimeWords('capo', null)).toBe('capo: 0:10 as built in');
		expect(ownTimeWords('one-string-more', 20)).toBe(
			'retuning one string, on top of the touch-up: 0:20',
		);
		expect(ownTimeWords('all-strings-more', null)).toBe(
			'all strings by one step, on top of the touch-up: as much as built in',
		);
		expect(ownTimeWords('of-a-later-version', 5)).toBe('of-a-later-version: 0:05');
	});

	test('set one by one are in one order, so that the same are the same', () => {
		const one = ownTimesWith(ownTimesWith({}, 'wipe', 5), 'walk', 6);
		const other = ownTimesWith(ownTimesWith({}, 'walk', 6), 'wipe', 5);
		expect(JSON.stringify(one)).toBe(JSON.stringify(other));
		expect(ownTimesWith(one, 'wipe', null)).toEqual({ walk: 6 });
	});
});
