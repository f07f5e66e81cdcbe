// What is to be said at a cue is read to its end beside how long the song has left.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

test('a long title and what is to be said both stand whole at 80 columns', () => {
	const { screen } = playShow(
		loadShow(join(import.meta.dirname, '../../shows/folk.yaml')),
		'-01:00 !ready\n00:00 space\n00:30 j "stubble" enter\n00:35 d\n00:40 space\n00:45 space\n00:50 !screen',
	);
	const row = screen.split('\n').find((line) => line.startsWith('SONG'));
	expect(row).toMatch(
		/^SONG +\d Stubble Fire {2}last verse {2}Cleo comes in with the bow +\d:\d\d left$/,
	);
});
