// What a jump leaves out is said before enter: the list goes on after the song jumped to.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';
import { showFrom } from '../showfile/show-files.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));

/** The screen in the first song, with this typed for a jump. */
function jumpingTo(title: string): string {
	return playShow(show, `00:00 space\n00:30 j\n00:31 "${title}"\n00:40 !screen\n`).screen;
}

// shows/club.yaml: Harbour, Lantern, Gravel, Last Ferry, Tissel, Salt Marsh, Weather Eye, Pilot Light,
// an interval, Plumb Line, Rainfall.
test('the next song skips nothing', () => {
	expect(jumpingTo('lantern')).not.toContain('SKIPS');
});

test('one or two songs are skipped, and named', () => {
	expect(jumpingTo('gravel')).toContain('  SKIPS Lantern\n');
	expect(jumpingTo('last')).toContain('  SKIPS Lantern and Gravel\n');
});

test('more are counted, and the interval with them', () => {
	expect(jumpingTo('tissel')).toContain('  SKIPS 3 songs\n');
	expect(jumpingTo('rainfall')).toContain('  SKIPS 8 songs and the interval\n');
});

test('entered, the list goes on after it, as was said', () => {
	const { states } = playShow(
		show,
		'00:00 space\n00:30 j\n00:31 "last"\n00:35 enter\n00:40 d space\n01:00 !state\n01:10 d space\n01:20 !state\n',
	);
	expect(states.slice(0, 2).map(({ song }) => song.id)).toEqual(['ferry', 'tissel']);
});

test('entered, what is skipped is said once more', () => {
	const { screen } = playShow(show, '00:00 space\n00:30 j\n00:31 "last"\n00:35 enter !screen\n');
	expect(screen).toContain('Last Ferry is next, skipping Lantern and Gravel. u undo.');
});

test('what was wrong with a skipped song is no gain, what was with a later one for it is', () => {
	// Two is played on the spare in drop D, which Four then wants in E standard half a minute later: one
	// string and a wipe, 75 s, from 8:30 on when the spare comes back as Three begins. Paused for the 15 s of
	// the hand-over that it is late for, that is done 10:00, and in hands 15 s later.
	const backup = showFrom(`format: rackside/1
players: [{id: ash, name: Ash}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard}
  - {id: A2, name: Aspen, slot: "2", kind: electric-6, tuning: half-step down}
  - {id: A4, name: Acorn, slot: "4", kind: electric-6, tuning: drop D, instead: [S1]}
  - {id: S1, name: Spare, slot: s, kind: electric-6, tuning: E standard}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: A1}}
  - {id: two, title: Two, length: "4:00", hands: {ash: A4}}
  - {id: three, title: Three, length: "0:30", hands: {ash: A2}}
  - {id: four, title: Four, length: "4:00", hands: {ash: S1}}
set: [one, two, three, four]
`);
	const { screen } = playShow(
		backup,
		'-01:00 !ready\n00:00 space\n00:30 f 4 enter\n02:00 j "thr" !screen\n',
	);
	expect(screen).toContain('SKIPS Two');
	expect(screen).toMatch(/Fixes: no E standard guitar for Four for \d:\d\d/);
	expect(screen).not.toMatch(/Fixes.* Two/);
});

test('after an interval a hand-over is told by how long before the song it is, not after the interval', () => {
	const away = showFrom(`format: rackside/1
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, for: [ash], tuning: E standard}
  - {id: B1, name: Birch, slot: "2", kind: electric-6, for: [bo], tuning: E standard}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: none, bo: none}}
  - {id: two, title: Two, length: "4:00", hands: {ash: none, bo: none}}
  - {id: three, title: Three, length: "4:00", hands: {ash: A1, bo: B1}}
set: [one, three, {interval: 20m}, two]
`);
	const { screen } = playShow(away, '-01:00 t 0\n00:00 space\n00:30 tab tab g down !screen\n');
	const seconds = (text = '') => text.split(':').reduce((sum, part) => sum * 60 + Number(part), 0);
	const begins = seconds(screen.match(/begins in ([\d:]+)/)?.[1]);
	const lines = [...screen.matchAll(/: work .*handed in ([\d:]+), ([\d:]+) before it begins$/gm)];
	expect(lines.map(([, handed, before]) => seconds(handed) + seconds(before))).toEqual([
		begins,
		begins,
	]);
});

test('when it is in hands stands before what it is a backup for: the end of a narrow row is cut', () => {
	const broken = showFrom(`format: rackside/1
players: [{id: ash, name: Ash}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: bass-4, tuning: E standard}
  - {id: A2, name: Anchorstone, slot: "2", kind: electric-6, tuning: E standard}
  - {id: S1, name: Second spare, slot: s, kind: electric-6, tuning: drop D}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: A1}}
  - {id: two, title: Two, length: "4:00", hands: {ash: A1}}
  - {id: three, title: Three, length: "4:00", hands: {ash: A2}}
set: [one, two, three]
`);
	const { screen } = playShow(
		broken,
		'00:00 space\n00:10 f 2 enter\n00:20 j\n00:21 "three"\n00:30 !screen',
	);
	expect(screen).toMatch(
		/Ash: S Second spare.*: work [\d:]+, handed in [\d:]+, [\d:]+ after One en/,
	);
});
