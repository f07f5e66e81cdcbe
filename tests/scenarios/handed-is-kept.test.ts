// What was put into hands for the coming song is what it is played on: the plan takes nothing back, however well
// another player could use it later.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadShow } from './load-show.ts';
import { playShow } from './play.ts';

const folk = loadShow(join(import.meta.dirname, '../../shows/folk.yaml'));

/** Barley Moon leaves Ash's guitar to the plan; Bo's for the song after it breaks just before. */
const UNTIL_THE_GAP = `
-10:00 t 0
-00:45 enter enter
00:00 space
00:40 t enter
03:19 space
03:31 enter
03:38 space
05:05 t enter
06:40 t enter
07:43 space
07:55 enter enter
08:24 space
11:26 t enter
11:44 b
11:47 5
11:52 0
12:14 space
`;

test('in the gap before it', () => {
	const { states, screen } = playShow(
		folk,
		`${UNTIL_THE_GAP}12:40 enter enter !state !screen\n12:58 space !state\n13:00 u !state`,
	);
	const [handed, begun, undone] = states;
	const { holds } = handed.players.ash;
	expect(handed.players.ash.next.song).not.toBe('barleymoon');
	expect(begun.players.ash).toMatchObject({ holds, planned: holds });
	expect(undone.players.ash.next.song).not.toBe('barleymoon');
	expect(screen).not.toContain('ASH       in    0:01');
});

test('a string that breaks on it before the song begins opens the question again', () => {
	const { states } = playShow(
		folk,
		`${UNTIL_THE_GAP}12:40 enter enter !state\n12:45 b 6 !state\n12:48 0 !state`,
	);
	const [handed, broken, open] = states;
	expect(handed.players.ash.holds).toBe('G3');
	expect(broken.incidents.at(-1)).toMatchObject({ kind: 'string-break', player: 'ash' });
	expect(open.players.ash.next).not.toBeNull();
	expect(open.players.ash.next.instrument).not.toBe('G3');
});
