// Ready as it stands is not yet ready for what is asked, and why not is said in words.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

const club = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));

/** The screen five seconds into the first song, everything marked ready as it stands before it. */
const begun = playShow(club, '-00:20 !ready\n00:00 space\n00:05 !screen\n').screen;

test('what is ready now and asked for soon is ready', () => {
	expect(begun).toMatch(/^ASH .*4 Anchor for 2 Lantern +READY +0:2\d/m);
});

// shows/club.yaml: a ready mark lasts 15 minutes, and Weather Eye comes after 26.
test('what is ready now and will be stale when it is handed names the work', () => {
	expect(begun).toMatch(/^CLEO +keeps 8 Coal, .*9 Cellar, B std, no capo, TOUCH UP 0:40/m);
});

test('what is ready in another way than asked is not yet ready, and by what work', () => {
	const { screen } = playShow(
		club,
		'-00:20 !ready\n00:00 space\n00:05 j "rain" enter\n00:20 !screen\n',
	);
	expect(screen).toMatch(/^BO .*7 Rowan for 10 Rainfall +TOUCH UP, CAPO ON 3, 0:55/m);
});
