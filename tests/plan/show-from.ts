// A show from the lines of a show file, for tests that need one of their own.

import { readShow } from '../../src/showfile/read-show.ts';
import type { Show } from '../../src/showfile/show.ts';
import { problemText } from '../../src/words/problem-text.ts';
import { problemOf } from '../../src/words/problems.ts';

export function showFrom(text: string): Show {
	const bytes = new TextEncoder().encode(`format: rackside/1\n${text}`);
	const { show, problems } = readShow(() => bytes, 'show.yaml');
	if (show === null) throw new Error(problems.map((one) => problemText(problemOf(one))).join('\n'));
	return show;
}
