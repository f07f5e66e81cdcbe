// What could take over from a broken instrument, best first, and what is never offered.

import { describe, expect, test } from 'vitest';
import type { Entry } from '../../../src/journal/entry.ts';
import { standIns } from '../../../src/plan/backups/stand-ins.ts';
import type { Session } from '../../../src/session/session.ts';
import { clubShow } from '../club-gear.ts';
import { allReady, mark, nightAfter, planAt, withEntries, withSongBegun } from '../night-at.ts';
import { showFrom } from '../show-from.ts';

const show = clubShow(`
songs:
  - id: one
    title: One
    length: "6:00"
    hands: {ash: {instrument: A1}, bo: {instrument: B1}, cleo: {instrument: C1}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A4}, bo: {instrument: S1}}}
set: [one, {song: two, gap: 60s}]
`);

const on = withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00');

function offers(session: Session, at: string, player: string, instrument?: string) {
	const plan = planAt(session, at);
	const asked = { session, plan, nowMs: mark(at), player };
	return standIns(instrument === undefined ? asked : { ...asked, instrument });
}

function ids(...asked: Parameters<typeof offers>): readonly string[] {
	return offers(...asked).map(({ instrument }) => instrument);
}

const ready = (instrument: string, at: string): Entry => ({
	k: 'made-ready',
	at: mark(at),
	instrument,
});

describe('the order', () => {
	test('right and ready first, alike before not alike, then least work; what is for others last', () => {
		expect(ids(on, '01:00', 'ash', 'A1')).toEqual(['S1', 'A3', 'A2', 'A4', 'B3']);
	});

	test('what is ready comes before what is alike', () => {
		const later = withEntries(on, ready('A3', '16:00'));
		expect(ids(later, '16:30', 'ash', 'A1')[0]).toBe('A3');
	});

	test('what somebody else is to get before the restring is done comes after what nobody is', () => {
		const twins = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A, name: A, slot: "1", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: P, name: P, slot: "2", kind: electric-6, tuning: E standard}
  - {id: Q, name: Q, slot: "3", kind: electric-6, tuning: E standard}
songs:
  - {id: s1, title: S1, length: "2:00", hands: {ash: {instrument: A}}}
  - {id: s2, title: S2, length: "4:00", hands: {bo: {instrument: P}}}
set: [s1, s2]
`);
		const night = withSongBegun(nightAfter(twins, allReady(twins, '-01:00')), '00:00');
		expect(ids(night, '00:10', 'ash', 'A')).toEqual(['Q', 'P']);
	});

	test('in place of what was in hands by mistake, what the song names comes before a spare', () => {
		const three = showFrom(`
players: [{id: ash, name: Ash}]
instruments:
  - {id: W, name: W, slot: "1", kind: electric-6, tuning: E standard}
  - {id: A, name: A, slot: "2", kind: electric-6, tuning: E standard}
  - {id: S, name: S, slot: s, kind: electric-6, tuning: E standard, spare: true}
songs:
  - {id: s1, title: S1, length: "4:00", hands: {ash: {instrument: A}}}
set: [s1]
`);
		const night = withEntries(
			withSongBegun(nightAfter(three, allReady(three, '-01:00')), '00:00'),
			{
				k: 'handed-over',
				at: mark('00:05'),
				by: 'exchange',
				player: 'ash',
				instrument: 'W',
			},
		);
		expect(ids(withEntries(night, ready('A', '00:20')), '00:30', 'ash', 'W')).toEqual(['A', 'S']);
	});

	test('as good as each other: a spare first, then by place on the rack', () => {
		const same = showFrom(`
players: [{id: ash, name: Ash}]
instruments:
  - {id: A, name: A, slot: "1", kind: electric-6, tuning: E standard}
  - {id: R, name: R, slot: r, kind: electric-6, tuning: E standard}
  - {id: Q, name: Q, slot: "3", kind: electric-6, tuning: E standard}
  - {id: Z, name: Z, slot: z, kind: electric-6, tuning: E standard, spare: true}
songs: [{id: s1, title: S1, length: "2:00", hands: {ash: {instrument: A}}}]
set: [s1]
`);
		const night = withSongBegun(nightAfter(same, allReady(same, '-01:00')), '00:00');
		expect(ids(night, '00:10', 'ash')).toEqual(['Z', 'Q', 'R']);
	});

	test('a spare meant for somebody else comes before their other instruments, both last', () => {
		const others = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A, name: A, slot: "1", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: B, name: B, slot: "2", kind: electric-6, tuning: E standard, for: [bo]}
  - {id: T, name: T, slot: "3", kind: electric-6, tuning: E standard, for: [bo], spare: true}
  - {id: D, name: D, slot: "4", kind: electric-6, tuning: drop D, for: [ash]}
songs: [{id: s1, title: S1, length: "2:00", hands: {ash: {instrument: A}}}]
set: [s1]
`);
		const night = withSongBegun(nightAfter(others, allReady(others, '-01:00')), '00:00');
		expect(ids(night, '00:10', 'ash')).toEqual(['D', 'T', 'B']);
	});
});

describe('never offered', () => {
	test("what is in somebody else's hands", () => {
		expect(ids(on, '01:00', 'ash', 'A1')).not.toContain('B1');
	});

	test('what somebody else is to be given at the same song', () => {
		const same = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A, name: A, slot: "1", kind: electric-6, tuning: E standard}
  - {id: P, name: P, slot: "2", kind: electric-6, tuning: E standard}
  - {id: Q, name: Q, slot: "3", kind: electric-6, tuning: E standard}
songs: [{id: s1, title: S1, length: "2:00", hands: {ash: {instrument: A}, bo: {instrument: P}}}]
set: [s1]
`);
		const before = nightAfter(same, allReady(same, '-01:00'));
		expect(ids(before, '-00:30', 'ash')).toEqual(['Q']);
		expect(ids(withSongBegun(before, '00:00'), '00:10', 'ash')).toEqual(['Q']);
	});

	test('what is out, faulty or has a string down', () => {
		const fewer = withEntries(
			on,
			{ k: 'put-aside', at: 1000, instrument: 'S1', fault: null },
			{ k: 'put-aside', at: 1000, instrument: 'A2', fault: 'crackle' },
			{ k: 'string-broke', at: 1000, incident: '1', instrument: 'A3', player: null },
		);
		expect(ids(fewer, '01:00', 'ash', 'A1')).toEqual(['A4', 'B3']);
	});

	test('a floating bridge where another tuning is wanted, unless a capo makes it sound so', () => {
		expect(ids(on, '01:00', 'ash', 'A4')).not.toContain('A3');
		const high = clubShow(`
songs: [{id: s1, title: S1, hands: {ash: {instrument: A1, capo: 3}}}]
set: [s1]
`);
		const night = withSongBegun(nightAfter(high, allReady(high, '-01:00')), '00:00');
		const argent = offers(night, '00:10', 'ash').find(({ instrument }) => instrument === 'A3');
		expect(argent).toMatchObject({
			capo: 3,
			readyInSeconds: 65,
			why: [
				{ code: 'capo', capo: 3 },
				{ code: 'bridge', bridge: 'floating' },
			],
		});
	});

	test('another family: no twelve-string for a six-string, no guitar for a bass', () => {
		expect(ids(on, '01:00', 'bo', 'B1')).not.toContain('B2');
		expect(ids(on, '01:00', 'cleo', 'C1')).toEqual(['C2']);
	});
});

test('a bass with more strings has the four that are wanted; the other way round it has not', () => {
	expect(offers(on, '01:00', 'cleo', 'C1')).toMatchObject([
		{ instrument: 'C2', readyInSeconds: 10, capo: 0, why: [{ code: 'has-strings', strings: 4 }] },
	]);
	const five = clubShow(`
songs: [{id: s1, title: S1, hands: {cleo: {instrument: C2}}}]
set: [s1]
`);
	const night = withSongBegun(nightAfter(five, allReady(five, '-01:00')), '00:00');
	expect(offers(night, '00:10', 'cleo')).toEqual([]);
});

test('says what is to be put on: the open tuning and the capo', () => {
	const aspen = offers(on, '01:00', 'ash', 'A1').find(({ instrument }) => instrument === 'A2');
	expect(aspen).toMatchObject({ capo: 1, readyInSeconds: 65, why: [{ code: 'capo', capo: 1 }] });
	expect(aspen?.tuning.name).toBe('half-step down');
});

describe('what is to be replaced', () => {
	test('during a song, what is held', () => {
		expect(ids(on, '01:00', 'ash')).toEqual(ids(on, '01:00', 'ash', 'A1'));
	});

	test('between songs, what comes next; what is in hands already can be kept if it sounds right', () => {
		const ended = withEntries(on, { k: 'song-ended', at: mark('06:00'), how: 'played' });
		expect(ids(ended, '06:10', 'ash')).toEqual(ids(ended, '06:10', 'ash', 'A4'));
		expect(offers(ended, '06:10', 'bo')[0]).toMatchObject({
			instrument: 'B1',
			readyInSeconds: 0,
			why: [{ code: 'in-hands' }],
		});
	});

	test('nothing, where a player has nothing to play', () => {
		const quiet = clubShow('songs: [{id: s1, title: S1}]\nset: [s1]\n');
		expect(offers(nightAfter(quiet, []), '-01:00', 'ash')).toEqual([]);
	});
});

test('what is in hands before the song ends comes before what is not', () => {
	const two = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A1, slot: "1", kind: electric-6, for: [ash], tuning: drop D}
  - {id: A2, slot: "2", kind: electric-6, for: [ash], tuning: E standard}
  - {id: B1, slot: "3", kind: electric-6, for: [bo], tuning: drop D}
songs:
  - {id: one, length: "4:00", hands: {ash: {instrument: A1}}}
  - {id: two, length: "4:00", hands: {ash: {instrument: A1}}}
set: [one, two]
`);
	const begun = withSongBegun(nightAfter(two, allReady(two, '-01:00')), '00:00');
	const offered = (at: string) => {
		const broken = withEntries(begun, {
			k: 'string-broke',
			at: mark(at),
			incident: '1',
			instrument: 'A1',
			player: 'ash',
		});
		const asked = { session: broken, plan: planAt(broken, at), nowMs: mark(at), player: 'ash' };
		return standIns(asked).map(({ instrument, readyInSeconds }) => [instrument, readyInSeconds]);
	};
	// A2 wants one string, 10 + 60 s: with 2:00 left Ash's own comes first, with 0:40 left Bo's, that is ready.
	expect(offered('02:00')).toEqual([
		['A2', 70],
		['B1', 10],
	]);
	expect(offered('03:20')).toEqual([
		['B1', 10],
		['A2', 70],
	]);
	// Neither before the end: as without one.
	expect(offered('03:55')).toEqual([
		['A2', 70],
		['B1', 10],
	]);
});

test('what another player is just taking is no backup', () => {
	const two = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A1, slot: "1", kind: electric-6, tuning: E standard}
  - {id: B1, slot: "2", kind: electric-6, tuning: E standard}
  - {id: S1, slot: s, kind: electric-6, tuning: E standard, spare: true}
songs:
  - {id: one, length: "4:00", hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
set: [one]
`);
	// The song is on; Bo's hand-over is not logged yet, and B1 is on its way to him.
	const begun = withEntries(
		nightAfter(two, allReady(two, '-01:00')),
		{ k: 'song-began', at: 0, item: '1' },
		{ k: 'handed-over', at: 0, by: 'plan', player: 'ash', instrument: 'A1' },
	);
	const plan = planAt(begun, '00:05');
	expect(plan.handOvers.map(({ player, instrument }) => [player, instrument])).toEqual([
		['bo', 'B1'],
	]);
	const asked = { session: begun, plan, nowMs: mark('00:05'), player: 'ash' };
	expect(standIns(asked).map(({ instrument }) => instrument)).toEqual(['S1']);
});
