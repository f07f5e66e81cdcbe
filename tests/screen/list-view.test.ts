// The list view drawn while the list is changed: what would be stands in its place, and the row in
// question is never under the question.

import { describe, expect, test } from 'vitest';
import { play } from '../scenarios/play.ts';
import { expectDrawn } from './expect-drawn.ts';

const OPEN = '-01:00 !ready\n00:00 space\n00:30 tab*2\n';
const drawn = (keys: string, size: string) =>
	play('set', `${OPEN}${keys} !screen --size ${size}`).screen;

describe.each(['80x24', '120x40'])('at %s', (size) => {
	test.each([
		['a song moved', '00:33 g down*3'],
		['a song to be dropped', '00:33 k'],
		['a list changed', '00:33 k enter\n00:40 down p "old" enter\n00:45 down h'],
		['a song to be put in', '00:33 p "old"'],
	])('%s', (name, keys) => {
		expectDrawn(`${name.replaceAll(' ', '-')}-${size}`, drawn(keys, size));
	});
});

test.each([12, 16, 20, 24])(
	'on %i rows the song that is held is in sight at every place',
	(rows) => {
		for (let downs = 1; downs <= 7; downs += 1) {
			expect(drawn(`00:33 g down*${downs}`, `80x${rows}`)).toMatch(/> +\d+ Lantern/);
		}
	},
);
