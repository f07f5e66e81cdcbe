// A capo that a player moves on what they keep is announced like a hand-over, before it is recorded.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));
const minute = (count: number) => String(count).padStart(2, '0');
/** Every song a minute long, until the ninth is on, in which Bo has what he keeps for the tenth. */
const toNinth = Array.from({ length: 9 }, (_, song) =>
	song === 0 ? '00:00 space' : `${minute(song)}:00 d\n${minute(song)}:05 space`,
).join('\n');

test('the capo that Bo moves for the tenth song stands before what he is given for the eleventh', () => {
	const { screen } = playShow(show, `-01:00 !ready\n${toNinth}\n08:30 !screen`);
	expect(screen).toMatch(/BO +in .*7 Rowan for 10 Rainfall +KEEPS 7, CAPO ON 3/);
	expect(screen).not.toContain('Tally Sticks');
});

test('once the song is on, the log says who has the capo on, and the next hand-over comes', () => {
	const { screen } = playShow(
		show,
		`-01:00 !ready\n${toNinth}\n09:00 d\n09:05 space\n09:30 !screen`,
	);
	expect(screen).toContain('Bo keeps 7 Rowan for Rainfall, capo 3');
	expect(screen).toMatch(/BO 5 Birch +in /);
});
