// A string goes in the middle of a song and a ready stand-in takes over; then the technician is called
// away. Figures worked out by hand from 270 s for one string and 15 s for a hand-over.

import { expect, test } from 'vitest';
import { standIns } from '../../src/plan/backups/stand-ins.ts';
import type { Session } from '../../src/session/session.ts';
import { tuningCalled } from '../../src/tuning/tuning.ts';
import { standInWords } from '../../src/words/backup-reasons.ts';
import { clubShow } from './club-gear.ts';
import { allReady, mark, nightAfter, planAt, withEntries, withSongBegun } from './night-at.ts';
import { handOverLines, warningLines, workLines } from './plan-figures.ts';

const show = clubShow(`
songs:
  - {id: six, title: Six, length: "8:15", hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
  - {id: seven, title: Seven, length: "4:00", hands: {ash: {instrument: A1}}}
set: [six, seven]
`);

const begun = withEntries(withSongBegun(nightAfter(show, allReady(show, '-01:00')), '20:00'), {
	k: 'made-ready',
	at: mark('18:00'),
	instrument: 'S1',
});
const broken = withEntries(begun, {
	k: 'string-broke',
	at: mark('21:10'),
	incident: '1',
	instrument: 'A1',
	player: 'ash',
});
const replaced = withEntries(broken, {
	k: 'handed-over',
	at: mark('21:25'),
	by: 'stand-in',
	incident: '1',
	player: 'ash',
	instrument: 'S1',
});

function offered(session: Session, at: string): readonly string[] {
	const plan = planAt(session, at);
	const asked = { session, plan, nowMs: mark(at), player: 'ash', instrument: 'A1' };
	return standIns(asked).map(({ instrument, readyInSeconds, why }) => {
		return `${instrument} in ${readyInSeconds} s: ${standInWords(show, why)}`;
	});
}

test('the spare that was made ready is offered first, then what needs least work', () => {
	expect(offered(broken, '21:10')).toEqual([
		'S1 in 10 s: same tuning, ready',
		'A3 in 55 s: RECHECK, floating bridge',
		'A2 in 65 s: capo 1, RECHECK',
		'A4 in 70 s: retune one string, RECHECK',
		'B3 in 55 s: RECHECK, acoustic, for Bo',
	]);
});

test('the restring is first in the list, without wiping or tuning on top', () => {
	expect(workLines(planAt(replaced, '21:45'))).toEqual([
		'restring A1 270 s, wanted 0:28:15, done 0:26:15, slack 120, begin by 0:23:45',
	]);
	expect(handOverLines(planAt(replaced, '21:45'))).toEqual(['seven: ash S1 > A1']);
});

test('called away, it is late, and who could keep what is said', () => {
	const plan = planAt(replaced, '24:00');
	expect(workLines(plan)).toEqual([
		'restring A1 270 s, wanted 0:28:15, done 0:28:45, slack -30, begin by 0:23:45',
	]);
	expect(warningLines(plan, show)).toContain(
		'late: A1: restring 0:15 short for Seven; Ash can keep S1 if not begun',
	);
	expect(plan.cost.lateness).toBe(30);
});

test('when the next song begins without it, the song is played on what stands in for it', () => {
	const seven = withEntries(
		replaced,
		{ k: 'song-ended', at: mark('28:15'), how: 'played' },
		{ k: 'song-began', at: mark('28:30'), item: '2' },
	);
	const plan = planAt(seven, '28:30');
	expect(plan.handOvers).toEqual([]);
	expect(plan.slots[0]).toMatchObject({ player: 'ash', instrument: 'S1', for: 'A1' });
	expect(plan.work).toEqual([]);
	expect(plan.idle).toMatchObject([{ job: 'restring', instrument: 'A1', seconds: 270 }]);
	const restrung = withEntries(seven, {
		k: 'made-ready',
		at: mark('29:00'),
		instrument: 'A1',
		tuning: tuningCalled('E standard', 'electric-6')!,
		capo: 0,
		isRestrung: true,
	});
	expect(planAt(restrung, '29:00').work).toEqual([]);
	expect(planAt(restrung, '29:00').idle).toEqual([]);
});

test('ready but still not handed, it goes stale like anything else', () => {
	const late = clubShow(`
songs:
  - {id: long, title: Long, length: "60:00", hands: {ash: {instrument: A1}}}
set: [long]
`);
	const on = withEntries(nightAfter(late, allReady(late, '00:00')), {
		k: 'song-began',
		at: mark('00:10'),
		item: '1',
	});
	expect(planAt(on, '15:00').work).toEqual([]);
	expect(planAt(on, '15:01').work).toMatchObject([{ job: 'touch-up', instrument: 'A1' }]);
});

test('played on with a string down, nothing changes hands before the next song, and it is said with a way out', () => {
	const playedOn = withEntries(broken, { k: 'played-on', at: mark('21:14'), incident: '1' });
	const plan = planAt(playedOn, '21:20');
	expect(handOverLines(plan)).toEqual(['seven: ash A1 > S1']);
	expect(plan.handOvers[0]?.for).toBe('A1');
	expect(warningLines(plan, show)).toEqual([
		'substituted: A1 has a string down: Ash plays S1 in Seven',
		"not-ready: Ash's A1 has a string down; backup S1",
		'tight-gap: Before Seven: hand-over 0:15, gap 0:15, nothing left',
	]);
});

test('two strings of an instrument with a floating bridge take 645 s and 90 s', () => {
	const floating = clubShow(`
songs:
  - {id: six, title: Six, length: "8:15", hands: {ash: {instrument: A3}}}
  - {id: seven, title: Seven, length: "4:00", hands: {ash: {instrument: A1}}}
  - {id: eight, title: Eight, length: "4:00", hands: {ash: {instrument: A3}}}
set: [six, seven, eight]
`);
	const both = { k: 'string-broke', at: mark('01:00'), instrument: 'A3', player: 'ash' } as const;
	const night = withEntries(
		withSongBegun(nightAfter(floating, allReady(floating, '-01:00')), '00:00'),
		{ ...both, incident: '1' },
		{ ...both, incident: '2' },
	);
	// Back when Seven begins, 8:30, it would be done 20:45 and Eight wants it 12:30: played on something else.
	const plan = planAt(night, '01:10');
	expect(plan.idle).toMatchObject([{ job: 'restring', instrument: 'A3', seconds: 735 }]);
	expect(plan.work.filter(({ job }) => job === 'restring')).toEqual([]);
	expect(plan.slots.at(-1)).toMatchObject({ named: 'A3', for: 'A3' });
});

test('the seconds of handing it over are no time for work: what they would make late gets it later', () => {
	const tight = clubShow(`
songs:
  - {id: one, title: One, length: "5:45", hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
  - {id: two, title: Two, length: "2:40", hands: {ash: {instrument: A1}}}
  - {id: three, title: Three, length: "4:00", hands: {bo: {instrument: B2}}}
  - {id: four, title: Four, length: "4:00", hands: {ash: {instrument: A1}}}
set: [one, two, three, four]
`);
	const ready = allReady(tight, '-01:00').filter(
		(one) => !('instrument' in one && one.instrument === 'B2'),
	);
	const night = withEntries(
		withSongBegun(nightAfter(tight, ready), '00:00'),
		{ k: 'string-broke', at: mark('01:00'), incident: '1', instrument: 'A1', player: 'ash' },
		{
			k: 'handed-over',
			at: mark('01:00'),
			by: 'stand-in',
			incident: '1',
			player: 'ash',
			instrument: 'S1',
		},
	);
	// Two begins 6:00 and wants A1 at 5:45, Three begins 8:55 and wants the twelve-string at 8:40. Restrung
	// by 5:30 and tuned 180 s from there on it would be done 8:30, but for the 15 s of handing A1 over: 8:45.
	const plan = planAt(night, '01:00');
	expect(handOverLines(plan)).toEqual(['three: bo B1 > B2', 'four: ash S1 > A1']);
	expect(plan.stays).toMatchObject([{ player: 'ash', instrument: 'S1', for: 'A1' }]);
	expect(plan.cost.lateness).toBe(0);
});

test('restrung for one player, it can be had by another from there on', () => {
	const shared = clubShow(`
songs:
  - {id: six, title: Six, length: "8:15", hands: {ash: {instrument: A4}, bo: none}}
  - {id: seven, title: Seven, length: "4:00", hands: {ash: {instrument: A1}}}
  - {id: eight, title: Eight, length: "4:00", hands: {ash: {instrument: A4}, bo: {instrument: A1}}}
set: [six, seven, eight]
`);
	const night = withEntries(
		withSongBegun(nightAfter(shared, allReady(shared, '-01:00')), '00:00'),
		{ k: 'string-broke', at: mark('01:00'), incident: '1', instrument: 'A1', player: null },
	);
	const plan = planAt(night, '01:00');
	expect(plan.work.filter(({ job }) => job === 'restring')).toMatchObject([{ player: 'ash' }]);
	expect(plan.handOvers.find(({ player }) => player === 'bo')).toMatchObject({
		section: { song: 'eight' },
		instrument: 'A1',
		for: null,
	});
});
