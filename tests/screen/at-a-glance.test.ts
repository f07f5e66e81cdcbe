// What a technician read wrongly or twice at a glance, each with what is to be read in its place.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

const at = (show: string, script: string) =>
	playShow(loadShow(join(import.meta.dirname, `../../shows/${show}.yaml`)), script).screen;
const READY = '-01:00 !ready\n-00:30 enter enter\n00:00 space\n';

test('who plays the song on with a backup comes before a gap that is only tight', () => {
	const screen = at('festival', `${READY}00:20 x b 1\n00:40 !screen\n`);
	expect(screen).toMatch(/^WATCH .*Bo has 1 Amber: Ash plays S Spare in Gravel/m);
});

test('once the set has ended, by how much it was over the curfew', () => {
	const show = showFrom(`
show: {title: Short, start: "20:00", curfew: "20:02"}
players: [{id: ash, name: Ash}]
instruments: [{id: A, name: Amber, slot: "1", kind: electric-6, tuning: E standard}]
songs: [{id: one, title: One, length: "3:00", hands: {ash: {instrument: A}}}]
set: [one]
`);
	const { screen } = playShow(show, '00:00 space\n01:00 !screen\n03:00 d !screen\n');
	const rows = screen.match(/^CURFEW .*/gm);
	expect(rows?.[0]).toMatch(/the set ends 20:03 +1:00 TOO LONG/);
	expect(rows?.[1]).toMatch(/the set ended 20:03 +1:00 over it/);
});

test('in a gap a jump says when it can be handed, and nothing of the song that has ended', () => {
	const screen = at('festival', `${READY}03:45 d\n03:50 j "quarry" !screen\n`);
	expect(screen).toMatch(/Ash: 2 Anchor, drop D: .*handed in \d:\d\d/);
	expect(screen).not.toMatch(/after Gravel ends/);
});

test('what a jump left behind is skipped in the list', () => {
	const screen = at('festival', `${READY}03:45 d\n03:50 j "quarry" enter\n03:55 tab tab !screen\n`);
	expect(screen).toMatch(/ Lantern +skipped/);
	expect(screen).toMatch(/ Quarry +next/);
});

test('of what is kept beside another card its tuning is said, and that it is kept once', () => {
	const screen = at(
		'festival',
		'-01:00 !ready\n-00:38 enter\n-00:37 enter\n-00:15 x a 3\n-00:13 !screen\n',
	);
	expect(screen).toMatch(/^ASH 3 Birch .*BO S Spare/m);
	expect(screen).toMatch(/^E std {2}no capo .*READY/m);
	expect(screen).not.toContain('KEEPS 3');
});

test('a jump goes by the number that every view has beside the song', () => {
	const screen = at('festival', `${READY}00:30 j "4" !screen\n`);
	expect(screen).toMatch(/^ *> Quarry$/m);
});
