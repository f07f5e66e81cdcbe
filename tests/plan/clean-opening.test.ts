// The first three songs of a night in which nothing goes wrong, figures worked out by hand.

import { expect, test } from 'vitest';
import { readinessOf } from '../../src/session/readiness.ts';
import { clubShow } from './club-gear.ts';
import { allReady, mark, nightAfter, planAt, withEntries, withSongBegun } from './night-at.ts';
import { handOverLines, warningLines, workLines } from './plan-figures.ts';

const show = clubShow(`
songs:
  - {id: harbour, title: Harbour, length: "4:00", hands: {ash: {instrument: A1}}}
  - {id: lantern, title: Lantern, length: "3:30", hands: {ash: {instrument: A4, tuning: drop D}}}
  - {id: gravel, title: Gravel, length: "3:45", hands: {ash: {instrument: A1}}}
set: [harbour, lantern, gravel]
`);

const opening = withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00');
const second = withSongBegun(
	withEntries(opening, { k: 'song-ended', at: mark('04:00'), how: 'played' }),
	'04:15',
);

test('during the first song the work on what comes back is planned already', () => {
	expect(workLines(planAt(opening, '00:30'))).toEqual([
		'touch-up A1 60 s, wanted 0:07:45, done 0:05:15, slack 150, begin by 0:06:45',
	]);
});

test('what came back is wiped and touched up in a minute, wanted 15 s before the third song', () => {
	const plan = planAt(second, '04:15');
	expect(second.players.ash?.holds).toBe('A4');
	expect(workLines(plan)).toEqual([
		'touch-up A1 60 s, wanted 0:07:45, done 0:05:15, slack 150, begin by 0:06:45',
	]);
	expect(handOverLines(plan)).toEqual(['gravel: ash A4 > A1']);
});

test('once ready, no work is left, and it is handed over fresh and without a warning', () => {
	const ready = withEntries(second, { k: 'made-ready', at: mark('05:30'), instrument: 'A1' });
	expect(planAt(ready, '05:30').work).toEqual([]);
	const ended = withEntries(ready, { k: 'song-ended', at: mark('07:45'), how: 'played' });
	expect(readinessOf(ended, 'A1', mark('08:00')).ageSeconds).toBe(150);
	const third = withSongBegun(ended, '08:00');
	expect(third.players.ash?.holds).toBe('A1');
	expect(planAt(third, '08:00').handOvers).toEqual([]);
	expect(warningLines(planAt(third, '08:00'), show)).toEqual([]);
});
