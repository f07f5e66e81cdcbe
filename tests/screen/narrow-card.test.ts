// Cards beside one another at 80×24: what is said of what comes off, and of what somebody else has still.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

const minute = (count: number) => String(count).padStart(2, '0');

test('what is broken goes to the bench, also where that shares its row with a pack', () => {
	const club = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));
	const toTenth = Array.from({ length: 10 }, (_, song) =>
		song === 0 ? '00:00 space' : `${minute(song)}:00 d\n${minute(song)}:05 space`,
	).join('\n');
	const { screen } = playShow(club, `-01:00 !ready\n${toTenth}\n09:30 b 7 0\n09:32 !screen`);
	expect(screen).toMatch(/ off: 7 Rowan to the bench; PACK P3$/m);
	expect(screen).toMatch(/ check volume 10, middle position$/m);
});

test('a capo that is on what another player has is moved once it is there', () => {
	const rack = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'I', 'J', 'K', 'L'].map(
		(id) => `  - {id: ${id}, name: Amber, slot: ${id}, kind: electric-6, tuning: E standard}`,
	);
	const show = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}, {id: cleo, name: Cleo}]
instruments:
${rack.join('\n')}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: {instrument: A}, bo: {instrument: B, capo: 2}, cleo: {instrument: C}}}
  - {id: two, title: Two, length: "3:00", hands: {ash: {instrument: B, tuning: drop D}, bo: {instrument: D}}}
set: [one, {song: two, gap: 60s}]
`);
	const { screen } = playShow(show, '-01:00 t 0\n00:00 space\n02:30 !screen');
	expect(screen).toMatch(/^BO HAS IT: CAPO OFF, RETUNE \d:\d\d/m);
});
