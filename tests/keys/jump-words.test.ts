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
test('the next song skips nothing', () => {
	expect(jumpingTo('lantern')).not.toContain('SKIPS');
});

test('one or two songs are skipped, and named', () => {
	expect(jumpingTo('gravel')).toContain('  SKIPS Lantern\n');
	expect(jumpingTo('last')).toContain('  SKIPS Lantern, Gravel\n');
});

test('more are counted, and the interval with them', () => {
	expect(jumpingTo('tinder')).toContain('  SKIPS 3 songs\n');
	expect(jumpingTo('rainfall')).toContain('  SKIPS 8 songs, the interval\n');
});

test('entered, the list goes on after it, as was said', () => {
	const { states } = playShow(
		show,
		'00:00 space\n00:30 j\n00:31 "last"\n00:35 enter\n00:40 d space\n01:00 !state\n01:10 d space\n01:20 !state\n',
	);
	expect(states.slice(0, 2).map(({ song }) => song.id)).toEqual(['ferry', 'tinder']);
});

test('entered, what is skipped is said once more', () => {
	const { screen } = playShow(show, '00:00 space\n00:30 j\n00:31 "last"\n00:35 enter !screen\n');
	expect(screen).toContain('Last Ferry is next, skipping Lantern, Gravel. u undo.');
});
