// A rehearsal whose band plays by itself: by the lengths, gaps and intervals of the show, from the first song on.

import { expect, test } from 'vitest';
import { memoryJournal } from '../../src/journal/memory-journal.ts';
import { openNight } from '../../src/night/night.ts';
import { playedAlong } from '../../src/night/played-along.ts';
import { SHOW_TEXT, showOf } from '../history/three-nights.ts';
import { sampleHeader } from '../journal/sample-journal.ts';

test('songs end and begin when they should, and nothing begins before a key', () => {
	const show = showOf(SHOW_TEXT.replace('{song: three, gap: 18s}', 'interval: 2m, three'));
	let atMs = 0;
	const night = playedAlong(
		openNight({
			...{ show, journal: memoryJournal(sampleHeader()), plannedZeroMs: 0 },
			...{ dayOffsetMinutes: 0, isRehearsal: true },
			clock: { wallMs: () => atMs, upMs: () => atMs, bootId: '' },
		}),
	);
	const moments: [number, string][] = [];
	let known = night.records().length;
	for (; atMs < 600_000; atMs += 1000) {
		if (atMs === 100_000) night.press('space');
		night.tick();
		for (const { e } of night.records().slice(known)) {
			const found = e.find(({ k }) => k === 'song-began' || k === 'song-ended');
			if (found) moments.push([atMs / 1000, found.k]);
		}
		known = night.records().length;
	}
	// Each song a minute, 40 s before Two, two minutes before Three, 40 s before Four.
	expect(moments).toEqual([
		[100, 'song-began'],
		[160, 'song-ended'],
		[200, 'song-began'],
		[260, 'song-ended'],
		[380, 'song-began'],
		[440, 'song-ended'],
		[480, 'song-began'],
		[540, 'song-ended'],
	]);
	expect(night.session().phase.value).toBe('over');
});
