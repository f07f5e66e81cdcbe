// A song that names nobody wants what the song above it in the file says, wherever it is played.

import { describe, expect, test } from 'vitest';
import { play } from './play.ts';

const harbour = '-01:00 !ready\n00:00 space\n';

describe('a skip in front of it', () => {
	const { states, screen } = play(
		'quarry',
		`${harbour}02:00 j "qua" !screen enter\n04:00 d\n04:05 !screen\n04:15 space !state\n`,
	);
	test('is said while typing, with what is handed all the same', () => {
		expect(screen).toContain('SKIPS Lantern');
		expect(screen).toMatch(/Ash: 4 Acorn, drop D: READY, handed in 2:1\d, 0:15 after Harbour ends/);
		expect(screen).toMatch(/^ASH +now +4 Acorn for 3 Quarry +READY/m);
	});
	test('hands it, and the other is back', () => {
		expect(states[0].song.id).toBe('quarry');
		expect(states[0].players.ash).toMatchObject({ holds: 'A4', since: '00:04:15' });
		expect(states[0].instruments.A4).toMatchObject({ tuning: 'drop D' });
		expect(states[0].instruments.A1.place).toBe('rack');
	});
});

test('moved behind, the song above still says what it wants', () => {
	const { states } = play(
		'quarry',
		'-01:00 !ready\n-00:40 tab tab down g down down enter\n00:00 space\n04:00 d !state\n04:15 space !state\n',
	);
	expect(states[0].players.ash.next).toMatchObject({ song: 'quarry', instrument: 'A4' });
	expect(states[1]).toMatchObject({ song: { id: 'quarry' }, players: { ash: { holds: 'A4' } } });
});

test('what sounds so stays when it comes again', () => {
	const { states } = play(
		'quarry',
		`${harbour}02:00 j "qua" enter\n04:00 d\n04:15 space\n05:00 b enter !state\n06:00 left\n06:10 right !state\n`,
	);
	expect(states[0].players.ash.holds).toBe('S1');
	expect(states[0].instruments.S1.tuning).toBe('drop D');
	expect(states[1]).toMatchObject({
		song: { id: 'quarry' },
		players: { ash: { holds: 'S1', next: { song: 'gravel', instrument: 'A1' } } },
	});
});
