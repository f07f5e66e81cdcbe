// When songs are expected, before the show and while it is under way.

import { expect, test } from 'vitest';
import { markText } from '../../../src/base/show-clock.ts';
import { sectionsAhead } from '../../../src/plan/demand/sections-ahead.ts';
import { planBeforeDoors } from '../../../src/plan/plan-before-doors.ts';
import { openSession } from '../../../src/session/open-session.ts';
import type { Session } from '../../../src/session/session.ts';
import { clubShow } from '../club-gear.ts';
import { mark, withEntries } from '../night-at.ts';

/** Song, start and end of each section ahead. */
function ahead(session: Session, at: string, plannedZero = '00:00'): readonly string[] {
	const moment = { session, nowMs: mark(at), plannedZeroMs: mark(plannedZero) };
	return sectionsAhead(moment).map(
		({ song, startMs, endMs }) => `${song} ${markText(startMs)} ${markText(endMs)}`,
	);
}

const songs = `
songs:
  - {id: one, title: One, length: "4:00"}
  - {id: two, title: Two, length: "3:00", ends: segue}
  - {id: three, title: Three}
  - {id: four, title: Four, length: "10:00"}
`;

const open = openSession(clubShow(`${songs}set: [one, two, three, {song: four, gap: 40s}]`));

test('gaps are 15 s, none after a segue, else what the file gives; lengths not given count as the median', () => {
	expect(ahead(open, '-10:00')).toEqual([
		'one 00:00:00 00:04:00',
		'two 00:04:15 00:07:15',
		'three 00:07:15 00:11:15',
		'four 00:11:55 00:21:55',
	]);
});

test('of an even number of lengths the median lies between the middle two; of none it is four minutes', () => {
	const even = `
songs:
  - {id: one, title: One, length: "2:00"}
  - {id: two, title: Two, length: "3:00"}
  - {id: three, title: Three}
set: [three]
`;
	expect(ahead(openSession(clubShow(even)), '-01:00')).toEqual(['three 00:00:00 00:02:30']);
	const none = 'songs: [{id: one, title: One}]\nset: [one]\n';
	expect(ahead(openSession(clubShow(none)), '-01:00')).toEqual(['one 00:00:00 00:04:00']);
});

test('the first song is expected at its planned start, or now once that is past', () => {
	expect(ahead(open, '-10:00', '05:00')[0]).toBe('one 00:05:00 00:09:00');
	expect(ahead(open, '06:00', '05:00')[0]).toBe('one 00:06:00 00:10:00');
});

const first = withEntries(open, { k: 'song-began', at: 0, item: '1' });

test('a song on ends at its estimate, or now once that is past, and moves what follows', () => {
	expect(ahead(first, '03:00')).toEqual(ahead(open, '-10:00'));
	expect(ahead(first, '05:00')[0]).toBe('one 00:00:00 00:05:00');
	expect(ahead(first, '05:00')[1]).toBe('two 00:05:15 00:08:15');
});

const ended = withEntries(first, { k: 'song-ended', at: mark('03:40'), how: 'played' });

test('once it has ended, the next is expected after the gap, or now', () => {
	expect(ahead(ended, '03:41')[0]).toBe('two 00:03:55 00:06:55');
	expect(ahead(ended, '04:30')[0]).toBe('two 00:04:30 00:07:30');
});

test('a song that was passed over is not expected, but keeps its place in the count', () => {
	const jumped = withEntries(first, {
		k: 'next-chosen',
		at: 1000,
		item: '5',
		inserted: { song: 'four', before: '2' },
	});
	const sections = sectionsAhead({ session: jumped, nowMs: 2000, plannedZeroMs: 0 });
	expect(sections.map(({ song, position }) => [song, position])).toEqual([
		['one', 1],
		['four', 2],
		['three', 4],
		['four', 5],
	]);
});

test('after a jump ahead the list goes on behind the song jumped to', () => {
	const jumped = withEntries(first, { k: 'next-chosen', at: 1000, item: '3' });
	expect(ahead(jumped, '00:02').map((line) => line.split(' ')[0])).toEqual([
		'one',
		'three',
		'four',
	]);
});

const evening = openSession(
	clubShow(`${songs}set: [one, {interval: 20m}, three, {encore: [four, two]}]`),
);

test('an interval stands in place of a gap, and the wait before an encore is a minute', () => {
	expect(ahead(evening, '-01:00')).toEqual([
		'one 00:00:00 00:04:00',
		'three 00:24:00 00:28:00',
		'four 00:29:00 00:39:00',
		'two 00:39:15 00:42:15',
	]);
});

test('an interval under way counts from its start, and lasts until a song begins', () => {
	const interval = withEntries(
		evening,
		{ k: 'song-began', at: 0, item: '1' },
		{ k: 'song-ended', at: mark('05:00'), how: 'played' },
	);
	expect(interval.phase.value).toBe('interval');
	expect(ahead(interval, '05:10')[0]).toBe('three 00:25:00 00:29:00');
	expect(ahead(interval, '26:00')[0]).toBe('three 00:26:00 00:30:00');
	const [section] = sectionsAhead({ session: interval, nowMs: mark('05:10'), plannedZeroMs: 0 });
	expect(section).toMatchObject({ isAfterInterval: true, gapSeconds: null });
});

test('when the set is over or packed nothing is ahead', () => {
	const only = openSession(clubShow(`${songs}set: [one]`));
	const over = withEntries(
		only,
		{ k: 'song-began', at: 0, item: '1' },
		{ k: 'song-ended', at: mark('04:00'), how: 'played' },
	);
	expect(ahead(over, '04:10')).toEqual([]);
	expect(ahead(withEntries(open, { k: 'show-ended', at: 0 }), '00:10')).toEqual([]);
});

const handing = clubShow(`
songs:
  - id: long
    title: Long
    length: "6:00"
    cues:
      - {at: Ch1}
      - {at: bridge, hand: {ash: A1}}
      - {at: solo, near: "5:00", hand: {ash: A2}}
set: [long]
`);

test('a song is divided where a cue hands over: at its estimate, else at equal parts', () => {
	expect(ahead(openSession(handing), '-01:00')).toEqual([
		'long 00:00:00 00:02:00',
		'long 00:02:00 00:05:00',
		'long 00:05:00 00:06:00',
	]);
	const session = openSession(handing);
	const sections = sectionsAhead({ session, nowMs: mark('-01:00'), plannedZeroMs: 0 });
	expect(sections.map(({ point }) => point)).toEqual([0, 2, 3]);
});

test('what is late from a third of a song on has to be begun as soon as it can be, not before', () => {
	const show = clubShow(`
songs:
  - id: s1
    title: S1
    length: "2:05"
    hands: {ash: {instrument: A1}}
    cues: [{at: solo, hand: {ash: A2}}, {at: out, hand: {ash: A1}}]
set: [s1]
`);
	const [work] = planBeforeDoors(show).work;
	expect(work).toMatchObject({ instrument: 'A1', fromMs: 41_667, beginByMs: 41_667 });
});

test('in a song that is on, cues reached are past and the others still to come', () => {
	const bridge = withEntries(
		openSession(handing),
		{ k: 'song-began', at: 0, item: '1' },
		{ k: 'cue-reached', at: mark('01:40'), index: 1 },
		{ k: 'cue-reached', at: mark('01:50'), index: 2 },
	);
	expect(ahead(bridge, '03:00')).toEqual(['long 00:02:00 00:05:00', 'long 00:05:00 00:06:00']);
	expect(ahead(bridge, '05:20')).toEqual(['long 00:02:00 00:05:20', 'long 00:05:20 00:06:00']);
});
