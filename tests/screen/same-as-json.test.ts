// What the screen and the JSON state both say of a night must be the same, each in its own words: songs
// by the same numbers, instruments by id for scripts and by what stands on the rack for people.

import { expect, test } from 'vitest';
import { play } from '../scenarios/play.ts';

test('after an audible songs have the same numbers as in the JSON state', () => {
	const { states, screen } = play(
		'audible',
		'-01:00 !ready\n00:00 space\n01:00 j "old" enter\n04:00 d\n04:30 space\n04:40 !state !screen\n' +
			'07:30 space\n07:45 space\n07:50 !state !screen',
	);
	const shown = [...screen.matchAll(/SONG +(\d+) of (\d+) +(\w+ ?\w*?) {2}/g)].map(
		([, position, of, title]) => ({ position: Number(position), of: Number(of), title }),
	);
	expect(shown).toEqual(states.slice(0, 2).map(({ song: { id: _, ...song } }) => song));
	expect(shown.map(({ of }) => of)).toEqual([5, 5]);
});

test('warnings call instruments by id in JSON and by slot and name on the screen', () => {
	const { states, screen } = play('opening', '00:00 space\n03:30 !state !screen --size 120x40');
	expect(states[0].warnings[0].text).toBe('A4 is 0:15 short for Lantern');
	expect(states[0].warnings[0].told).toBeUndefined();
	expect(screen).toMatch(/WATCH .*4 Acorn is 0:15 short for Lantern/);
});
