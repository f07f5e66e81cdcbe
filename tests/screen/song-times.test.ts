// How long a song has gone on and has left: each number is read with the word after it.

import { expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { playShow } from '../scenarios/play.ts';

const show = showFrom(`
players: [{id: ash, name: Ash}]
instruments: [{id: A, name: Amber, slot: "1", kind: electric-6, tuning: E standard}]
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: {instrument: A}}}
  - {id: two, title: Two, length: "3:00"}
set: [one, {interval: 20m}, two]
`);

test('a gap that runs over says so beside what was planned, in the list too', () => {
	const songs = showFrom(`
players: [{id: ash, name: Ash}]
instruments: [{id: A, name: Amber, slot: "1", kind: electric-6, tuning: E standard}]
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: {instrument: A}}}
  - {id: two, title: Two, length: "3:00"}
set: [one, two]
`);
	const at = (time: string, keys = '') =>
		playShow(songs, `-01:00 t 0\n00:00 space\n03:00 space\n${time}${keys} !screen --size 80x24\n`)
			.screen;
	expect(at('03:10')).toMatch(/^GAP +0:10 of 0:15 /m);
	expect(at('05:06')).toMatch(/^GAP +2:06 of 0:15, 1:51 over /m);
	expect(at('05:06', ' tab tab')).toMatch(/^> +2 Two .* 0:15$/m);
});

test.each([
	['00:00 space\n01:12', 'SONG', '1:12 of 3:00   1:48 left'],
	['00:00 space\n03:43', 'SONG', '3:43 of 3:00   0:43 over'],
	['00:00 space\n03:00 space\n04:10', 'INTERVAL', '18:50 left'],
	['00:00 space\n03:00 space\n24:10', 'INTERVAL', '1:10 over'],
])('%s', (keys, label, words) => {
	for (const size of ['60x20', '80x24', '200x60']) {
		const { screen } = playShow(show, `-01:00 t 0\n${keys} !screen --size ${size}\n`);
		const [row = ''] = screen.match(new RegExp(`^${label} .*`, 'm')) ?? [];
		expect(row).toContain(size === '60x20' ? words.replace(/^.* of \S+ +/, '') : words);
	}
});
