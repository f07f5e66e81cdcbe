// What each way out costs, through the real keys: breaks, exchanges, and a change of the list. Times are
// our own and were worked out by hand; the seconds of each piece of work are common practice, no source.

import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { clubShow } from '../plan/club-gear.ts';
import { showFrom } from '../plan/show-from.ts';
import { loadShow } from './load-show.ts';
import { playShow, type State } from './play.ts';

const GEAR = `
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A, name: Amber, slot: "1", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: B, name: Birch, slot: "2", kind: electric-6, tuning: E standard, for: [bo]}
  - {id: S, name: Spare, slot: s, kind: electric-6, tuning: E standard, spare: true}
`;

const ids = (standIns: State): readonly string[] => standIns.map((one: State) => one.instrument);
const promptOf = (screen: string): readonly string[] => {
	const lines = screen.split('\n').map((line) => line.trimEnd());
	const from = lines.findIndex((line) => line.startsWith('STRING BREAK'));
	return lines.slice(from + 1, from + 6);
};

describe('two breaks within a minute, and one spare', () => {
	const show = showFrom(`${GEAR}
songs:
  - {id: one, title: One, length: "5:00", hands: {ash: {instrument: A}, bo: {instrument: B}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A}, bo: {instrument: B}}}
set: [one, two]
`);
	const { states, screen } = playShow(
		show,
		'-01:00 !ready\n00:00 space\n02:00 b 1 enter\n02:30 b 2\n02:31 !state\n02:32 !screen\n02:33 0\n02:40 !state\n',
	);
	test('the second has nothing to take over, and playing on is what is left', () => {
		expect(states[0].players.ash.holds).toBe('S');
		expect(states[0].standIns.bo).toEqual([]);
		expect(promptOf(screen).slice(0, 2)).toEqual([
			'  No backup fits: 1 Amber has a string down; Ash has S Spare.',
			'    or  0 play on 5 strings, 2:28 left; later: Bo has nothing in Two',
		]);
		expect(states[0].warnings).toContainEqual(
			expect.objectContaining({ code: 'no-stand-in', instrument: 'B' }),
		);
	});
	test('neither restring can end before the next song, so nothing waits for them', () => {
		// 270 s from 2:30 on, the 15 s of the hand-over not free for them, end after 5:00, 15 s before Two begins.
		const idle = { job: 'restring', seconds: 270, song: null, wanted: null, slack: null };
		expect(states[1].todo).toEqual([
			expect.objectContaining({ ...idle, instrument: 'A' }),
			expect.objectContaining({ ...idle, instrument: 'B' }),
		]);
	});
});

describe('the spare is needed later in another tuning', () => {
	const show = showFrom(`${GEAR}
  - {id: T, name: Tern, slot: t, kind: electric-6, tuning: E standard}
songs:
  - {id: one, title: One, length: "2:00", hands: {ash: {instrument: A}, bo: {instrument: B}}}
  - {id: two, title: Two, length: "2:00", hands: {bo: {instrument: S, tuning: drop D}}}
set: [one, {song: two, gap: 30s}]
`);
	const { states, screen } = playShow(
		show,
		'-01:00 !ready\n00:00 space\n01:30 b 1\n01:31 !state\n01:32 !screen',
	);
	test('what nobody needs comes first, though it is no spare, and the spare says who needs it', () => {
		expect(ids(states[0].standIns.ash)).toEqual(['T', 'S']);
		expect(promptOf(screen).slice(0, 2)).toEqual([
			'  TAKE  T Tern   0:10 E std  same tuning, ready',
			'    or  S Spare  0:10 E std  later: Bo needs backup in Two; same tuning, ready',
		]);
	});
	test('in the last minute the way through on five strings stands with them', () => {
		// 1:32 of 2:00 is gone.
		expect(promptOf(screen)[2]).toMatch(/^ {4}or {2}0 play on 5 strings, 0:28 left/);
	});
});

describe('another instrument in hands', () => {
	const show = clubShow(`
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: {instrument: A1}}}
  - {id: two, title: Two, length: "3:00"}
  - {id: three, title: Three, length: "3:00", hands: {bo: {instrument: A4, tuning: drop D}, ash: {instrument: A1}}}
set: [one, two, three]
`);
	test('what is wrong now is said in words, and what it costs later', () => {
		// Two names nobody and wants what One says: the Amber, on the rack since 2:00. Wipe and touch-up, 60 s,
		// stand still for the 15 s before Two begins at 3:15; then 15 s to hand it over.
		const { screen } = playShow(show, '-01:00 !ready\n00:00 space\n02:00 x 4\n02:01 !screen');
		expect(screen).toContain('Ash: 4 Anvil in drop D; One wants 1 Amber in E standard.');
		const wide = playShow(
			show,
			'-01:00 !ready\n00:00 space\n02:00 x 4\n02:01 !screen --size 160x40\n02:31 !screen --size 160x40',
		);
		// In hands at 3:30, which the screen counts down to for as long as the sentence stands.
		expect(wide.screen).toMatch(/No E standard guitar for Two for 1:29\./);
		expect(wide.screen).toMatch(/No E standard guitar for Two for 0:59\./);
	});
	test('what is in hands where the song wants none is said', () => {
		const bare = clubShow(`
songs: [{id: one, title: One, length: "3:00", hands: {ash: none}}]
set: [one]
`);
		const { screen } = playShow(bare, '-01:00 !ready\n00:00 space\n01:00 x 1\n01:01 !screen');
		expect(screen).toContain('Ash has 1 Amber, but One wants hands empty.');
	});
	test('nothing is said of one that sounds right and costs nothing', () => {
		const { screen } = playShow(show, '-01:00 !ready\n00:00 space\n02:00 x s a\n02:01 !screen');
		expect(screen).not.toMatch(/wants|has no|has nothing/);
	});
});

describe('an audible in place of the next song that makes the song after it impossible', () => {
	const show = clubShow(`
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: {instrument: A1}}}
  - {id: two, title: Two, length: "3:00", hands: {ash: {instrument: A1}}}
  - {id: three, title: Three, length: "3:00", hands: {ash: {instrument: A4}}}
  - {id: wanted, title: Wanted, length: "2:00", hands: {ash: {instrument: A4, tuning: E standard}}}
set: [one, two, three]
`);
	const keys =
		'-01:00 !ready\n00:00 space\n01:00 j "wan" tab\n01:03 !screen\n01:04 enter\n01:05 !state';
	const { states, screen } = playShow(show, keys);
	test('is said while the title is typed', () => {
		// The anvil in hands until Wanted ends at 5:15, given back for drop D: 5:30, wipe, one string: 75 s.
		// Three begins 5:30; the hand-over's 15 s end at 5:30. Done 6:45, in hands 7:00: 5:57 from 1:03.
		expect(screen).toContain('Later: no drop D guitar for Three for 5:57');
	});
	test('and afterwards it is in the warnings, late', () => {
		expect(states[0].warnings).toContainEqual(
			expect.objectContaining({ code: 'late', song: 'three', instrument: 'A4' }),
		);
	});
});

test('where nothing can be in hands before the song ends, the tall row says to play on, and what comes after', () => {
	const festival = loadShow(join(import.meta.dirname, '../../shows/festival.yaml'));
	const { screen } = playShow(
		festival,
		'-10:00 t 0\n-01:00 enter enter\n00:00 space\n03:15 b 1\n03:17 !screen\n',
	);
	expect(screen).toMatch(/^ASH +DOWN +0:02 STRING BREAK 1 Amber +PLAY ON, +0:28 left$/m);
	expect(screen).toMatch(/next S Spare/);
});

test('what cannot be had in time is said as the song wants it, not as a backup would be set up', () => {
	const { screen } = playShow(
		loadShow(join(import.meta.dirname, '../../shows/folk.yaml')),
		'-01:00 !ready\n-00:30 b\n-00:29 5\n-00:26 x 3\n-00:24 !screen',
	);
	// The file: bo: {instrument: G2, capo: 4}, and G2 is in E standard.
	const said = screen.replace(/\s+/g, ' ');
	expect(said).toContain('No E standard guitar with capo 4 for Five-bar');
	expect(said).not.toContain('half-step down guitar');
});

test('what a backup costs later is read to its end, and says that one is needed', () => {
	const { screen } = playShow(
		loadShow(join(import.meta.dirname, '../../shows/club.yaml')),
		'-01:00 !ready\n00:00 space\n00:10 b 1\n00:20 0\n00:30 x 4\n00:40 b 4\n00:41 !screen',
	);
	const rows = promptOf(screen);
	expect(rows.length).toBeGreaterThan(3);
	for (const row of rows) expect(row).toMatch(/later(?: \+1)?: needs backup in Lan/);
	expect(rows[0]).toContain('later: needs backup in Lantern;');
	// What it differs in is seen only once it is in hands.
	expect(rows.find((row) => row.includes('3 Cobble'))).toContain('floating bridge; later:');
});
