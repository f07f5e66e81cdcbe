// Board cues that the technician presses pause the work for five seconds, where the file says when.

import { expect, test } from 'vitest';
import { clubShow } from './club-gear.ts';
import { allReady, mark, nightAfter, planAt, withEntries, withSongBegun } from './night-at.ts';
import { workLines } from './plan-figures.ts';

const show = clubShow(`
boards: {bo: [{id: drive, name: Drive}]}
songs:
  - id: one
    title: One
    length: "4:00"
    hands: {ash: {instrument: A1}}
    cues:
      - {at: Ch1, near: "1:00", bo: {drive: on}}
      - {at: V2, bo: {drive: off}}
      - {at: Ch2, near: "3:00", bo: {drive: on}}
      - {at: out, near: "3:30", say: last time}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A4}}}
set: [one, two]
`);

const on = withEntries(withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00'), {
	k: 'all-doubted',
	at: mark('00:10'),
});

test('work runs on past a cue, five seconds later', () => {
	// Begun at 0:30, 45 s of work with the cue at 1:00 in it; at the latest 3:10, after the one at 3:00.
	expect(workLines(planAt(on, '00:30'))).toEqual([
		'touch-up A4 45 s, wanted 0:04:00, done 0:01:20, slack 160, begin by 0:03:15',
	]);
});

test('latest moments leave room for cues still to come', () => {
	const longer = {
		...show,
		songs: show.songs.map((song) => (song.id === 'one' ? { ...song, lengthSeconds: 360 } : song)),
	};
	const ready = withSongBegun(nightAfter(longer, allReady(longer, '-01:00')), '00:00');
	const broken = withEntries(ready, {
		k: 'string-broke',
		at: mark('00:12'),
		incident: '1',
		instrument: 'A4',
		player: null,
	});
	// Wanted at 6:00: 270 s and 5 s for each of two cues from 0:30 on; at the latest 1:25, only one cue ahead.
	expect(workLines(planAt(broken, '00:30'))).toEqual([
		'restring A4 270 s, wanted 0:06:00, done 0:05:10, slack 50, begin by 0:01:25',
	]);
});

test('what new strings would be too late for is played on something else', () => {
	const broken = withEntries(on, {
		k: 'string-broke',
		at: mark('00:12'),
		incident: '1',
		instrument: 'A4',
		player: null,
	});
	// Wanted at 4:00: 240 s less 5 s for each of two cues are short of 270.
	const plan = planAt(broken, '00:00');
	expect(workLines(plan)).toEqual([
		'retune S1 60 s, wanted 0:04:00, done 0:01:00, slack 180, begin by 0:02:55',
	]);
	expect(plan.idle).toMatchObject([{ job: 'restring', instrument: 'A4', seconds: 270 }]);
	expect(plan.slots.at(-1)).toMatchObject({ instrument: 'S1', for: 'A4' });
});

test('a cue that was reached early pauses nothing later', () => {
	const reached = withEntries(on, { k: 'cue-reached', at: mark('00:50'), index: 1 });
	expect(workLines(planAt(reached, '00:50'))[0]).toContain('done 0:01:35');
});

test('in a song that comes again its cues are pressed again', () => {
	const again = withEntries(
		on,
		{ k: 'cue-reached', at: mark('01:00'), index: 1 },
		{ k: 'cue-reached', at: mark('03:00'), index: 3 },
		{ k: 'next-chosen', at: mark('03:20'), item: '1' },
		{ k: 'string-broke', at: mark('03:25'), incident: '1', instrument: 'A4', player: null },
	);
	// The song lasts until 4:00 and again from 4:15 to 8:15, its cues then at 5:15 and 7:15.
	expect(workLines(planAt(again, '03:30'))).toEqual([
		'restring A4 270 s, wanted 0:08:15, done 0:08:10, slack 5, begin by 0:03:35',
	]);
});
