// What x says before and after a slot is typed that its own player has in hands already.

import { expect, test } from 'vitest';
import { playShow } from '../scenarios/play.ts';
import { showFrom } from '../showfile/show-files.ts';

const show = showFrom(`format: rackside/1
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: B1, name: Coal, slot: "3", kind: electric-6, tuning: E standard, for: [bo]}
  - {id: S1, name: Dace, slot: "4", kind: electric-6, tuning: E standard}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: A1, bo: B1}}
  - {id: two, title: Two, length: "3:00", hands: {ash: A1, bo: S1}}
set: [one, two]
`);
const words = (script: string): string =>
	playShow(show, `-01:00 !ready\n00:00 space\n${script} !screen`).screen.replace(/\s+/g, ' ');

test('the question says all that answers it', () => {
	expect(words('00:30 x')).toContain(
		'What is in hands now? A slot; or a player, then a slot, or - for none',
	);
});

test('the player who follows from the slot keeps it, which is said with the way to another player', () => {
	const screen = words('02:00 x 3');
	expect(screen).toContain(
		'Logged: Bo keeps 3 Coal for Two. Somebody else has it? u, then x, the player, 3.',
	);
	const { states } = playShow(
		show,
		'-01:00 !ready\n00:00 space\n02:00 x 3\n02:05 u\n02:10 x a 3 !state',
	);
	expect(states[0].players).toMatchObject({ ash: { holds: 'B1' }, bo: { holds: null } });
});

test('where several could have it, whose key changes nothing is said before it is pressed', () => {
	expect(words('03:00 d\n03:15 space\n03:30 x 4')).toContain(
		'Who has 4 Dace? Bo has it: b logs that Bo keeps it',
	);
});

test('a swap is not explained', () => {
	expect(words('00:30 x 4 b')).not.toContain('Somebody else');
});
