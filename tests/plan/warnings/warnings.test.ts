// What is said, and when it is not said any more.

import { expect, test } from 'vitest';
import { clubShow } from '../club-gear.ts';
import { allReady, mark, nightAfter, planAt, withEntries, withSongBegun } from '../night-at.ts';
import { warningLines } from '../plan-figures.ts';

const show = clubShow(`
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}, cleo: {instrument: C2}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A4}}}
  - {id: three, title: Three, length: "4:00", hands: {ash: {instrument: A1}, bo: {instrument: B2}}}
set: [one, {song: two, gap: 25s}, {song: three, gap: 25s}]
`);

const on = withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00');
const doubted = withEntries(on, { k: 'all-doubted', at: mark('01:00') });

test('a calm night says nothing', () => {
	expect(warningLines(planAt(on, '00:10'), show)).toEqual([]);
});

test('what is not ready is said a minute and a half before its hand-over, not earlier', () => {
	// Wanted at 4:10, the song ending 4:00 and the gap 25 s.
	expect(warningLines(planAt(doubted, '02:39'), show)).toEqual([]);
	expect(warningLines(planAt(doubted, '02:40'), show)).toEqual([
		'not-ready: A4 is not ready for Two',
	]);
	const ready = withEntries(doubted, { k: 'made-ready', at: mark('02:50'), instrument: 'A4' });
	expect(warningLines(planAt(ready, '02:50'), show)).toEqual([]);
});

test('what was ready too long ago is stale, said for the coming hand-over', () => {
	const early = withSongBegun(nightAfter(show, allReady(show, '-14:00')), '00:00');
	expect(warningLines(planAt(early, '00:30'), show)).toEqual([]);
	expect(warningLines(planAt(early, '01:01'), show)).toEqual(['stale: RECHECK A4 for Two']);
});

test('late work is said with what could stand in, and if nothing can, that too', () => {
	const twelve = clubShow(`
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A4}, bo: {instrument: B2}}}
set: [one, {song: two, gap: 40s}]
`);
	const begun = withSongBegun(nightAfter(twelve, allReady(twelve, '-01:00')), '00:00');
	const all = withEntries(begun, { k: 'all-doubted', at: mark('01:00') });
	// Wanted at 4:10: 45 s for A4, then 115 s of 180 for B2; the other 65 s only after the hand-overs,
	// from 4:40 to 5:45.
	const lines = warningLines(planAt(all, '01:30'), show);
	expect(lines).toContain('late: B2 is 1:05 short for Two');
	expect(lines).toContain('no-stand-in: No backup for B2: there is no other 12-string');
});

test('only the coming gap is said to be tight', () => {
	const tight = clubShow(`
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A4}}}
  - {id: three, title: Three, length: "4:00", hands: {ash: {instrument: A2}, bo: {instrument: B1}}}
set: [one, two, {song: three, gap: 20s}]
`);
	const begun = withSongBegun(nightAfter(tight, allReady(tight, '-01:00')), '00:00');
	const ready = withEntries(begun, ...allReady(tight, '00:01'));
	expect(warningLines(planAt(ready, '00:10'), show)).toEqual([
		'tight-gap: Before Two: hand-over 0:15, gap 0:15, nothing left',
	]);
	const second = withSongBegun(
		withEntries(ready, { k: 'song-ended', at: mark('04:00'), how: 'played' }),
		'04:15',
	);
	expect(warningLines(planAt(second, '04:20'), show)).toEqual([
		'tight-gap: Before Three: 2 hand-overs 0:30, gap 0:20, 0:10 short',
	]);
	expect(planAt(second, '04:20').cost.overGap).toBe(1);
});

test('a gap with five seconds to spare is not tight, with less it is', () => {
	const gap = (seconds: string) =>
		clubShow(`
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A4}}}
set: [one, {song: two, gap: ${seconds}}]
`);
	const lines = (seconds: string) => {
		const night = gap(seconds);
		return warningLines(
			planAt(withSongBegun(nightAfter(night, allReady(night, '-01:00')), '00:00'), '00:10'),
			night,
		);
	};
	expect(lines('20s')).toEqual([]);
	expect(lines('19s')).toHaveLength(1);
});

test('a set that will not end before the curfew is said by how much, and moves with the night', () => {
	const late = clubShow(`
show: {title: Late, start: "23:50", curfew: "00:00"}
songs: [{id: one, title: One, length: "9:00"}]
set: [one]
`);
	expect(warningLines(planAt(nightAfter(late, []), '-01:00'), late)).toEqual([]);
	expect(warningLines(planAt(nightAfter(late, []), '02:30'), late)).toEqual([
		'short-curfew: The set ends 1:30 after the curfew',
	]);
});
