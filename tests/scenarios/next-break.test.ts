// A second player's string breaks while nobody has answered for the first: by the key of a break, in the panel.

import { expect, test } from 'vitest';
import { loadShow } from './load-show.ts';
import { play, playShow } from './play.ts';

const club = loadShow('shows/club.yaml');
const OPEN = '-01:00 !ready\n00:00 space\n01:00 b 1\n01:05 b 5\n';

test('both are open, each with its own answer, and the first stays in sight', () => {
	const { states, screen } = playShow(
		club,
		`${OPEN}01:07 !state !screen --size 80x24\n01:10 enter\n01:11 !state\n01:15 enter\n01:16 !state\n`,
	);
	const [both, one, none] = states;
	expect(
		both!.incidents.map((one: Record<string, unknown>) => [one.kind, one.player, one.standIn]),
	).toEqual([
		['string-break', 'ash', null],
		['string-break', 'bo', null],
	]);
	expect(screen).toContain('STRING BREAK  Bo  5 Birch');
	expect(screen).toMatch(/ASH STRING BREAK 1 Amber +DOWN +0:07/);
	// One spare is not promised to both.
	expect(both!.standIns.ash[0].instrument).not.toBe(both!.standIns.bo[0].instrument);
	// Bo's is answered first, then what is still asked is Ash's.
	expect(one!.players.bo!.holds).not.toBe('B1');
	expect(one!.players.ash!.holds).toBe('A1');
	expect(none!.players.ash!.holds).not.toBe('A1');
	expect(none!.players.ash!.holds).not.toBe(one!.players.bo!.holds);
});

test('the key pressed twice in a hurry breaks nothing more', () => {
	const { states } = playShow(
		club,
		'-01:00 !ready\n00:00 space\n01:00 b 1\n01:05 b 1 esc\n01:10 !state\n',
	);
	expect(states[0]!.incidents).toHaveLength(1);
});

test('tab for a song that was dropped says why nothing gives way', () => {
	const { screen } = play(
		'set',
		'-01:00 !ready\n00:00 space\n00:30 tab*2\n00:33 down k enter\n00:40 esc\n00:45 j "lan" tab !screen --size 80x24\n',
	);
	expect(screen).toContain('is on the list: enter moves it up to be next');
});
