// Three players change at once and one pair of hands does it all. Figures worked out by hand: hand-overs
// of 10, 12 and 15 s in a gap of 40 s, 60 + 45 + 30 s of work, ready for eight minutes.

import { expect, test } from 'vitest';
import { allReady, mark, nightAfter, planAt, withEntries } from './night-at.ts';
import { warningLines, workLines } from './plan-figures.ts';
import { showFrom } from './show-from.ts';

const show = showFrom(`
show: {title: Three at once, recheck-after: 8m}
players:
  - {id: ash, name: Ash}
  - {id: bo, name: Bo}
  - {id: cleo, name: Cleo}
instruments:
  - {id: M1, name: Mica, slot: "1", kind: mandolin-8, tuning: GDAE, times: {hand-over: 10s}}
  - {id: R1, name: Rust, slot: "2", kind: resonator-6, tuning: open G, times: {hand-over: 12s}}
  - {id: U1, name: Umber, slot: "3", kind: upright-4, tuning: E standard, times: {touch-up: 30s}}
songs:
  - {id: five, title: Five, length: "5:00"}
  - id: six
    title: Six
    length: "4:00"
    hands: {ash: {instrument: M1}, bo: {instrument: R1}, cleo: {instrument: U1}}
set: [five, {song: six, gap: 40s}]
`);

const ready = (at: string) =>
	withEntries(nightAfter(show, allReady(show, at)), {
		k: 'song-began',
		at: mark('15:00'),
		item: '1',
	});

test('what was made ready at 12:40 is fresh at 20:40; a second before, it would be stale', () => {
	expect(planAt(ready('12:40'), '17:00').work).toEqual([]);
	expect(planAt(ready('12:39'), '17:00').work).toHaveLength(3);
});

test('after the temperature fell all of it is to be done, and the last has 38 s to spare', () => {
	const doubted = withEntries(ready('13:00'), { k: 'all-doubted', at: mark('17:00') });
	expect(workLines(planAt(doubted, '17:10'))).toEqual([
		'touch-up M1 60 s, wanted 0:20:03, done 0:18:10, slack 113, begin by 0:17:48',
		'touch-up R1 45 s, wanted 0:20:03, done 0:18:55, slack 68, begin by 0:18:48',
		'touch-up U1 30 s, wanted 0:20:03, done 0:19:25, slack 38, begin by 0:19:33',
	]);
});

test('37 s of hand-overs in 40 s are said to be tight', () => {
	expect(warningLines(planAt(ready('13:00'), '17:00'), show)).toEqual([
		'tight-gap: Before Six: 3 hand-overs 0:37, gap 0:40, 0:03 left',
	]);
});
