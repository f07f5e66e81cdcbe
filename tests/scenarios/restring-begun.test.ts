// A restring that nobody marks counts as worked on while it stands first in the list, and so what it is on
// stays planned. That this is taken for granted is said. Times are our own; the seconds of a restring are
// common practice, no source.

import { expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { playShow } from './play.ts';

const show = showFrom(`
players: [{id: ash, name: Ash, key: a}]
instruments:
  - {id: A, name: Amber, slot: "1", kind: electric-6, tuning: E standard}
  - {id: S, name: Spare, slot: s, kind: electric-6, tuning: E standard, spare: true}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: S}}}
  - {id: three, title: Three, length: "4:00", hands: {ash: {instrument: A}}}
set: [one, two, three]
`);
const watch = (script: string): string =>
	/^WATCH.*$/m.exec(playShow(show, `-01:00 !ready\n00:00 space\n${script}`).screen)?.[0] ?? '';

test('that it is planned as if it had been begun is said once it would be late, and no backup is lost for it', () => {
	// Three is at 8:30, its hand-over at 8:15: 270 s begin at 3:45 at the latest, the hand-over at 4:00 between.
	expect(watch('01:00 b 1 enter\n03:00 !screen')).not.toContain('short');
	expect(watch('01:00 b 1 enter\n04:00 d space\n05:00 !screen')).toMatch(
		/ 1 Amber: restring \d:\d\d short for Three; Ash can keep S Spare if not/,
	);
});
