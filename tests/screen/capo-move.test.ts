// A capo that a player moves on what they keep is announced like a hand-over, before it is recorded.

import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
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

describe('skipped into, a song for which Bo keeps what he has with a capo', () => {
	const folk = loadShow(join(import.meta.dirname, '../../shows/folk.yaml'));
	const skip =
		'-01:00 !ready\n00:00 space\n03:20 d\n03:35 space\n05:25 right\n05:27 right\n05:29 right\n05:30 right\n05:31 right\n';

	test('has a card that says so, as late as the song has gone on', () => {
		const { screen } = playShow(folk, `${skip}05:33 !screen`);
		expect(screen).toMatch(/^BO 4 Kettle +0:02 late/m);
		expect(screen).toMatch(/^KEEPS 4, CAPO ON 2/m);
		expect(screen).toContain('enter handed, keeps 4, capo on 2');
	});

	test('enter records it, and there is nothing wrong any more', () => {
		const { screen, states } = playShow(folk, `${skip}05:33 !state\n05:40 enter !state !screen`);
		expect(states[0].warnings).toMatchObject([{ code: 'wrong-tuning', player: 'bo' }]);
		expect(states[1].warnings).toEqual([]);
		expect(states[1].instruments.R1).toMatchObject({ place: 'hands', capo: 2 });
		expect(states[1].players.bo).toMatchObject({ holds: 'R1', since: '00:03:35' });
		expect(screen).not.toContain('CAPO ON 2');
	});
});

describe('before a song that wants hands empty', () => {
	const two = showFrom(`
players: [{id: ash, name: Ash, key: a}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: {instrument: A1}}}
  - {id: two, title: Two, length: "3:00", hands: {ash: {instrument: A1, capo: 2}}}
  - {id: three, title: Three, length: "3:00", hands: {ash: none}}
set: [one, {song: two, gap: 15s}, {song: three, gap: 15s}]
`);
	const skipped = '-01:00 t 0\n00:00 space\n00:30 right\n';

	test.each(['80x24', '120x40', '200x60'])('the card of the capo says so, too, at %s', (size) => {
		const { screen } = playShow(two, `${skipped}00:40 !screen --size ${size}`);
		expect(screen).toMatch(/KEEPS 1, CAPO ON 2/);
		expect(screen).toMatch(/^next: hands empty$/m);
	});

	test('so does that of what is wrong in hands', () => {
		const { screen } = playShow(
			two,
			`${skipped}00:35 enter\n00:40 c 1 "drop D" enter\n00:44 !screen`,
		);
		expect(screen).toMatch(/WRONG/);
		expect(screen).toMatch(/^next: hands empty$/m);
	});

	test('but what is handed for a later song is not said there: it would be handed too soon', () => {
		const four = showFrom(`
players: [{id: ash, name: Ash, key: a}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard}
  - {id: B1, name: Birch, slot: "2", kind: electric-6, tuning: drop D}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: {instrument: A1}}}
  - {id: two, title: Two, length: "3:00", hands: {ash: {instrument: A1, capo: 2}}}
  - {id: three, title: Three, length: "3:00", hands: {ash: {instrument: A1, capo: 2}}}
  - {id: four, title: Four, length: "3:00", hands: {ash: {instrument: B1}}}
set: [one, {song: two, gap: 15s}, {song: three, gap: 15s}, {song: four, gap: 15s}]
`);
		const { screen } = playShow(four, `${skipped}00:40 !screen`);
		expect(screen).toMatch(/KEEPS 1, CAPO ON 2/);
		expect(screen).not.toMatch(/^next: /m);
	});
});
