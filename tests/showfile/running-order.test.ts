// The set one song after the other: gaps, intervals and marks on the show clock.

import { describe, expect, it } from 'vitest';
import { runningOrder } from '../../src/showfile/running-order.ts';
import { showFrom, smallShow } from './show-files.ts';

const SONGS = `  - {id: a, length: "3:00"}
  - {id: b, length: "4:00", ends: segue}
  - {id: c, length: "5:00", ends: ring}
  - {id: d}`;

function marks(set: string, songs = SONGS) {
	return runningOrder(showFrom(smallShow({ songs, set }))).map((one) => ({
		id: one.song.id,
		gap: one.gapSeconds,
		start: one.startSeconds,
		end: one.endSeconds,
	}));
}

describe('the running order', () => {
	it('puts 15 s between songs, nothing after a segue, and what the file gives where it gives it', () => {
		expect(marks('[a, b, c, {song: a, gap: 40s}]')).toEqual([
			{ id: 'a', gap: null, start: 0, end: 180 },
			{ id: 'b', gap: 15, start: 195, end: 435 },
			{ id: 'c', gap: 0, start: 435, end: 735 },
			{ id: 'a', gap: 40, start: 775, end: 955 },
		]);
	});

	it('lets a gap that is given stand even after a segue', () => {
		expect(marks('[b, {song: a, gap: 5s}]')[1]).toMatchObject({ gap: 5, start: 245 });
	});

	it('lets an interval stand in place of a gap', () => {
		expect(marks('[a, interval: 20m, {song: c, gap: 40s}]')[1]).toEqual({
			id: 'c',
			gap: null,
			start: 180 + 1200,
			end: 180 + 1200 + 300,
		});
	});

	it('waits 60 s for an encore, and 15 s between its songs', () => {
		expect(marks('[b, encore: [a, c]]').map(({ gap }) => gap)).toEqual([null, 60, 15]);
		expect(marks('[a, encore: [{song: c, gap: 2m}]]').map(({ gap }) => gap)).toEqual([null, 120]);
	});

	it('counts a song without a length as the median of those given, 240 s when none is', () => {
		expect(marks('[d]')[0]?.end).toBe(240);
		expect(marks('[d]', `${SONGS}\n  - {id: e, length: "10:00"}`)[0]?.end).toBe(270);
		expect(marks('[d]', '  - {id: d}')[0]?.end).toBe(240);
	});

	it('counts places among songs, not among items', () => {
		const order = runningOrder(
			showFrom(smallShow({ songs: SONGS, set: '[a, interval: 5m, b, a]' })),
		);
		expect(order.map(({ position }) => position)).toEqual([1, 2, 3]);
		expect(order.map(({ isAfterInterval }) => isAfterInterval)).toEqual([false, true, false]);
	});
});
