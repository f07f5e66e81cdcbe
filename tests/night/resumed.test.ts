// What the log says of a night that is taken up again: only what its file can tell.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));

test('how long the program was off at most: since the last entry, for nothing tells when it stopped', () => {
	// The program ran until 1:30 and is started again at once; nothing was logged since 0:48.
	const script = '00:00 space\n00:48 m "hum" enter\n01:30 !kill\n01:31 l !screen';
	expect(playShow(show, script).screen).toContain('resumed after up to 0:42 off');
});
