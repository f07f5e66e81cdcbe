// A rehearsal like an earlier night on a real terminal: once the first song was begun, the band plays by itself, and a
// start again begins anew.

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { keepNights, NIGHTS, SHOW_TEXT } from '../history/three-nights.ts';
import { cleanUpAfterEach, PATIENCE_MS, scratch, startProgram } from './whole-program.ts';

cleanUpAfterEach();

test('the band ends the first song and begins the second', async () => {
	const data = scratch();
	keepNights(data);
	const file = join(data, 'three.yaml');
	writeFileSync(file, SHOW_TEXT);
	const words = `rehearse ${file} --like ${NIGHTS[2]?.id} --speed 20`;
	const first = startProgram({ data, words });
	await first.screen.waitFor('? all', PATIENCE_MS);
	await first.screen.press('space');
	await first.screen.waitFor('One ended', PATIENCE_MS);
	await first.screen.waitFor('Two began', PATIENCE_MS);
	first.signal('SIGTERM');
	await first.gone();
	const again = startProgram({ data, words });
	await again.screen.waitFor('? all', PATIENCE_MS);
	// Whether it is before the show's start or after it, by the clock of the day on which the test runs.
	expect(again.screen.text()).toMatch(/CUE +One starts/);
});
