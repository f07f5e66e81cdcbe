// A song from off the list is called while another is on. Figures worked out by hand: a stale acoustic
// that gets a capo takes 45 + 10 s, its hand-over 15 s.

import { expect, test } from 'vitest';
import type { Moment } from '../../../src/plan/demand/sections-ahead.ts';
import { previewSong } from '../../../src/plan/what-if/change-preview.ts';
import { whatIf } from '../../../src/plan/what-if/what-if.ts';
import { nextSongItem } from '../../../src/session/find.ts';
import { clubShow } from '../club-gear.ts';
import { allReady, mark, nightAfter, planAt, withSongBegun } from '../night-at.ts';
import { handOverLines, warningLines, workLines } from '../plan-figures.ts';

const show = clubShow(`
songs:
  - id: eleven
    title: Eleven
    length: "7:15"
    hands: {ash: {instrument: A1}, bo: {instrument: B1}, cleo: {instrument: C1}}
  - {id: rainfall, title: Rainfall, length: "3:50", hands: {bo: {instrument: B1}}}
  - {id: oldmill, title: Old Mill, length: "4:05", hands: {bo: {instrument: B3, capo: 3}}}
set: [eleven, rainfall]
`);

const on = withSongBegun(nightAfter(show, allReady(show, '16:30')), '40:40');
const asked = { session: on, nowMs: mark('47:30'), plannedZeroMs: 0, song: 'oldmill' };

/** What the song would mean as the next, as the prompt asks it. */
function previewJump({ song, ...moment }: Moment & { readonly song: string }) {
	const changed = whatIf(moment, { do: 'choose-next', song });
	const next = changed.ok ? nextSongItem(changed.session) : null;
	return changed.ok && next !== null ? previewSong(moment, changed, next.key) : null;
}

test('looked at, it is stale, wants 55 s of work and is in hands 45 s after the song at the earliest', () => {
	const bo = previewJump(asked)?.players.find(({ player }) => player === 'bo');
	expect(bo).toMatchObject({
		from: 'B1',
		instrument: 'B3',
		capo: 3,
		condition: 'stale',
		workSeconds: 55,
		inHandsMs: mark('48:40'),
		afterEndSeconds: 45,
	});
	expect(bo?.tuning?.name).toBe('E standard');
});

test('looked at, who keeps what they have is said to keep it', () => {
	const others = previewJump(asked)?.players.filter(({ player }) => player !== 'bo');
	expect(others?.map(({ instrument, condition }) => [instrument, condition])).toEqual([
		['A1', 'in-hands'],
		['C1', 'in-hands'],
	]);
});

test('looking changes nothing', () => {
	const before = planAt(on, '47:30');
	previewJump(asked);
	expect(planAt(on, '47:30')).toEqual(before);
	expect(before.sections.map(({ song }) => song)).toEqual(['eleven', 'rainfall']);
});

test('chosen in the place of the song that was next, it is planned without that one', () => {
	const chosen = whatIf(asked, {
		do: 'choose-next',
		song: 'oldmill',
		place: 'instead-of-next',
	});
	if (!chosen.ok) throw new Error(chosen.why.code);
	const plan = planAt(chosen.session, '47:30');
	expect(plan.sections.map(({ song, position }) => [song, position])).toEqual([
		['eleven', 1],
		['oldmill', 2],
	]);
	expect(handOverLines(plan)).toEqual(['oldmill: bo B1 > B3']);
	// 25 s until the song ends, 15 s kept for the hand-over, then the other 30 s.
	expect(workLines(plan)).toEqual([
		'capo B3 55 s, wanted 0:47:55, done 0:48:40, slack -45, begin by 0:47:00',
	]);
	expect(warningLines(plan, show)).toContain('stale: RECHECK B3 for Old Mill');
	expect(warningLines(plan, show)).toContain(
		'late: B3 is 0:30 short for Old Mill; Bo can keep B1 with capo 3',
	);
});

test('what is ready is handed first while the rest is made ready', () => {
	const two = clubShow(`
songs:
  - {id: on, title: On, length: "4:00", hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
  - {id: next, title: Next, length: "4:00"}
  - {id: both, title: Both, length: "4:00", hands: {ash: {instrument: A4}, bo: {instrument: B3, capo: 2}}}
set: [on, next]
`);
	const session = withSongBegun(nightAfter(two, allReady(two, '-01:00')), '00:00');
	const preview = previewJump({ session, nowMs: mark('03:40'), plannedZeroMs: 0, song: 'both' });
	// Bo's 55 s begin at 3:40; at 4:00 A4 is handed until 4:15; the other 35 s, then 15 s: 5:05.
	expect(preview?.players.map(({ player, inHandsMs }) => [player, inHandsMs])).toEqual([
		['ash', mark('04:15')],
		['bo', mark('05:05')],
	]);
});

test('what is still in other hands can only be worked on once it is back', () => {
	const moves = clubShow(`
songs:
  - {id: on, title: On, length: "4:00", hands: {ash: {instrument: S1}}}
  - {id: next, title: Next, length: "4:00"}
  - {id: swap, title: Swap, length: "4:00", hands: {ash: none, bo: {instrument: S1}}}
set: [on, next]
`);
	const session = withSongBegun(nightAfter(moves, allReady(moves, '-01:00')), '00:00');
	const preview = previewJump({ session, nowMs: mark('03:00'), plannedZeroMs: 0, song: 'swap' });
	// Back at 4:15, a minute of work, 15 s: in hands 90 s after the song.
	expect(preview?.players).toMatchObject([
		{ player: 'ash', from: 'S1', instrument: null, isHandOver: true, inHandsMs: null },
		{
			player: 'bo',
			instrument: 'S1',
			condition: 'not-ready',
			workSeconds: 60,
			afterEndSeconds: 90,
		},
	]);
});

test('a song that is not in the catalogue has no preview', () => {
	expect(previewJump({ ...asked, song: 'nothing' })).toBeNull();
});
