// The row of what was last done, where a step did more than it has room for.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

const folk = loadShow(join(import.meta.dirname, '../../shows/folk.yaml'));
const lastOf = (script: string): string =>
	playShow(folk, `-01:00 !ready\n00:00 space\n${script}`).screen.match(/^LAST .*/m)?.[0] ?? '';

test('names what the start of a song recorded of hands before that it began', () => {
	const last = lastOf(
		'03:20 d\n03:35 space\n07:40 d\n07:50 t 3\n08:00 t 5\n08:20 space\n08:22 !screen',
	);
	expect(last).toMatch(/Ash has 3 Larch, E standard, capo 2; \+2 more +u undo$/);
});

test('in the order in which it happened where all has room', () => {
	expect(lastOf('03:20 d\n03:35 space !screen')).toMatch(/Under the Hedge began; Bo has 4 Kettle/);
});

test('of hand-overs none of which has room whole, who has what', () => {
	// Each line, with the tuning and what it is a backup for, is longer than the row.
	const long = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A, name: Amber Jazz Standard, slot: "1", kind: electric-6, for: [ash], tuning: E standard}
  - {id: B, name: Birch Walnut Deluxe, slot: "2", kind: electric-6, for: [bo], tuning: E standard}
  - {id: C, name: Second Spare Guitar, slot: "3", kind: electric-6, for: [ash], tuning: E standard, spare: true}
  - {id: D, name: Third Spare Guitar, slot: "4", kind: electric-6, for: [bo], tuning: E standard, spare: true}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: {instrument: A}, bo: {instrument: B}}}
set: [one]
`);
	const { screen } = playShow(
		long,
		'-01:00 t 0\n-00:50 f 1 enter\n-00:45 f 2 enter\n00:00 space !screen',
	);
	expect(screen).toMatch(/^LAST .*Ash has 3 Second Spare Guitar; \+2 more +u undo$/m);
});
