// Somebody has something else in hands than the plan says: a skip too far, the wrong guitar.

import { expect, test } from 'vitest';
import { clubShow } from './club-gear.ts';
import { allReady, mark, nightAfter, planAt, withEntries, withSongBegun } from './night-at.ts';
import { handOverLines, slotLines, warningLines, workLines } from './plan-figures.ts';

const show = clubShow(`
songs:
  - {id: fourteen, title: Fourteen, length: "4:00", ends: segue, hands: {ash: {instrument: A4}}}
  - {id: fifteen, title: Fifteen, length: "4:00"}
  - {id: sixteen, title: Sixteen, length: "4:00", hands: {ash: {instrument: A1}}}
  - {id: seventeen, title: Seventeen, length: "4:00", hands: {ash: {instrument: A2}}}
  - {id: eighteen, title: Gravel, length: "4:00", hands: {ash: {instrument: A4}}}
set: [fourteen, fifteen, sixteen, seventeen, eighteen]
`);

const first = withSongBegun(nightAfter(show, allReady(show, '53:00')), '54:00');
const skipped = withEntries(
	first,
	{ k: 'song-ended', at: mark('55:00'), how: 'cut-short' },
	{ k: 'song-began', at: mark('55:00'), item: '2' },
	{ k: 'song-ended', at: mark('55:00.400'), how: 'skipped' },
	{ k: 'song-began', at: mark('55:00.400'), item: '3' },
);

test('after a skip what the song wants is wanted now, and nothing is taken as handed', () => {
	const plan = planAt(skipped, '55:03');
	expect(handOverLines(plan)[0]).toBe('sixteen: ash A4 > A1');
	expect(plan.handOvers[0]?.section.hasBegun).toBe(true);
	expect(plan.handOvers[0]?.wantedMs).toBe(mark('55:03'));
	expect(warningLines(plan, show)[0]).toBe(
		'wrong-tuning: Ash: A4 in drop D; Sixteen wants A1 in E standard',
	);
	expect(skipped.players.ash?.holds).toBe('A4');
});

const before18 = withEntries(
	withSongBegun(
		withEntries(skipped, { k: 'song-ended', at: mark('58:00'), how: 'played' }),
		'58:15',
	),
	{ k: 'song-ended', at: mark('1:02:00'), how: 'played' },
);
const wrong = withEntries(before18, {
	k: 'handed-over',
	at: mark('1:02:10'),
	by: 'exchange',
	player: 'ash',
	instrument: 'A1',
});

test('the wrong guitar is said at once, before the song begins', () => {
	const plan = planAt(wrong, '1:02:10');
	expect(warningLines(plan, show)[0]).toBe(
		'wrong-tuning: Ash: A1 in E standard; Gravel wants A4 in drop D',
	);
	expect(slotLines(plan, 'eighteen')).toEqual(['ash A4 drop D']);
	expect(plan.handOvers).toEqual([]);
});

test('put right, nothing is left to say, and the other is not wanted again', () => {
	const right = withEntries(wrong, {
		k: 'handed-over',
		at: mark('1:02:26'),
		by: 'exchange',
		player: 'ash',
		instrument: 'A4',
	});
	expect(warningLines(planAt(right, '1:02:26'), show)).toEqual([]);
	expect(planAt(right, '1:02:26').handOvers).toEqual([]);
});

test('the right guitar in another tuning, or with a capo left on, is said in words', () => {
	const found = withEntries(withSongBegun(before18, '1:02:15'), {
		k: 'found-as',
		at: mark('1:02:20'),
		instrument: 'A4',
		capo: 2,
	});
	expect(warningLines(planAt(found, '1:02:20'), show)).toEqual([
		"wrong-tuning: Ash's A4 has capo 2; Gravel wants no capo",
	]);
});

test('what was handed for the next song while this one rings out is not given back', () => {
	const opening = clubShow(`
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A4}}}
  - {id: three, title: Three, length: "4:00", hands: {ash: {instrument: A1}}}
set: [one, two, three]
`);
	const on = withSongBegun(nightAfter(opening, allReady(opening, '-01:00')), '00:00');
	const handed = withEntries(on, {
		k: 'handed-over',
		at: mark('03:58'),
		by: 'plan',
		player: 'ash',
		instrument: 'A4',
	});
	expect(handOverLines(planAt(handed, '03:59'))).toEqual(['three: ash A4 > A1']);
	// Back at 3:58, so wiped and touched up for the third song, 8:30 less 15 s for its hand-over.
	expect(workLines(planAt(handed, '03:59'))).toEqual([
		'touch-up A1 60 s, wanted 0:08:15, done 0:04:59, slack 196, begin by 0:07:15',
	]);
});

test('what is faulty and handed all the same is kept to the end of its song, and no further', () => {
	const kept = clubShow(`
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}}}
  - {id: two, title: Two, length: "4:00"}
  - {id: three, title: Three, length: "4:00"}
set: [one, two, three]
`);
	const faulty = withEntries(
		withSongBegun(nightAfter(kept, allReady(kept, '-01:00')), '00:00'),
		{ k: 'put-aside', at: mark('01:00'), instrument: 'S1', fault: 'buzz' },
		{
			k: 'handed-over',
			at: mark('02:00'),
			by: 'exchange',
			player: 'ash',
			instrument: 'S1',
		},
	);
	const plan = planAt(faulty, '02:00');
	expect(slotLines(plan, 'one')).toEqual(['ash S1 E standard']);
	expect(slotLines(plan, 'two')).toEqual(['ash A1 E standard']);
	expect(handOverLines(plan)).toEqual(['two: ash S1 > A1']);
});

test('so is what meets a need of that song, though the plan would not choose it', () => {
	const open = clubShow(`
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {needs: {kind: electric-6, sounds: E standard}}}}
  - {id: three, title: Three, length: "4:00", hands: {ash: {needs: {kind: electric-6, sounds: E standard}}}}
set: [one, two, three]
`);
	const faulty = withEntries(
		withSongBegun(nightAfter(open, allReady(open, '-01:00')), '00:00'),
		{ k: 'put-aside', at: mark('01:00'), instrument: 'S1', fault: 'buzz' },
		{ k: 'handed-over', at: mark('03:59'), by: 'exchange', player: 'ash', instrument: 'S1' },
		{ k: 'song-ended', at: mark('04:00'), how: 'played' },
		{ k: 'song-began', at: mark('04:00'), item: '2' },
	);
	const plan = planAt(faulty, '04:01');
	expect(slotLines(plan, 'two')).toEqual(['ash S1 E standard']);
	expect(plan.handOvers.map(({ section, from }) => [section.song, from])).toEqual([
		['three', 'S1'],
	]);
});
