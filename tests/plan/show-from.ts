// A show from the lines of a show file, for tests that need one of their own.

import { problemText } from '../../src/base/problem.ts';
import { readShow } from '../../src/showfile/read-show.ts';
import type { Show } from '../../src/showfile/show.ts';
import { problemOf } from '../../src/words/problems.ts';

export function showFrom(text: string): Show {
	const bytes = new TextEncoder().encode(`format: rackside/1\n${text}`);
	const { show, problems } = readShow(() => bytes, 'show.yaml');
	if (show === null) throw new Error(problems.map((one) => problemText(problemOf(one))).join('\n'));
	return show;
}
