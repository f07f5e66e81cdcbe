// Problems on standard error, one a line.

import { cleanText } from '../base/clean-text.ts';
import type { Problem } from '../base/problem.ts';
import { problemText } from '../words/problem-text.ts';
import { EXIT } from './exit-code.ts';
import type { Io } from './io.ts';

/** Says each problem in a sentence; gives back the exit code for a request that cannot be used. */
export function tellProblems(problems: readonly Problem[], io: Io): number {
	for (const problem of problems) io.complain(`${cleanText(problemText(problem))}\n`);
	return EXIT.unusable;
}
