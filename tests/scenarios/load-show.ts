// A show read from a file, for tests that take shows as given.

import { readFileSync } from 'node:fs';
import { readShow } from '../../src/showfile/read-show.ts';
import type { Show } from '../../src/showfile/show.ts';
import { problemText } from '../../src/words/problem-text.ts';
import { problemOf } from '../../src/words/problems.ts';

/** The show in a file; throws its problems when it has any. */
export function loadShow(path: string): Show {
	const reading = readShow((name) => readFileSync(name), path);
	if (!reading.show)
		throw new Error(reading.problems.map((one) => problemText(problemOf(one))).join('\n'));
	return reading.show;
}
