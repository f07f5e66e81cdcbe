// What a jump leaves out is said before enter: the list goes on after the song jumped to.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));

/** The screen in the first song, with this typed for a jump. */
function jumpingTo(title: string): string {
	return playShow(show, `00:00 space\n00:30 j\n00:31 "${title}"\n00:40 !screen\n`).screen;
}

// shows/club.yaml: Harbour, Lantern, Gravel, Last Ferry, Tinder, Salt Marsh, Weather Eye, Pilot Light,
// an interval, Kestrel, Rainfall.
test('the next song passes over nothing', () => {
	expect(jumpingTo('lantern')).not.toContain('PASSES OVER');
});

test('one or two songs are passed over by title', () => {
	expect(jumpingTo('gravel')).toContain('  PASSES OVER Lantern\n');
	expect(jumpingTo('last')).toContain('  PASSES OVER Lantern, Gravel\n');
});

test('more are counted, and the interval with them', () => {
	expect(jumpingTo('tinder')).toContain('  PASSES OVER 3 songs\n');
	expect(jumpingTo('rainfall')).toContain('  PASSES OVER 8 songs, the interval\n');
});

test('entered, the list goes on after it, as was said', () => {
	const { states } = playShow(
		show,
		'00:00 space\n00:30 j\n00:31 "last"\n00:35 enter\n00:40 d space\n01:00 !state\n01:10 d space\n01:20 !state\n',
	);
	expect(states.slice(0, 2).map(({ song }) => song.id)).toEqual(['ferry', 'tinder']);
});
