// A problem as one line, for people.

import type { Place, Problem } from '../base/problem.ts';

/** `file:line:column`, as far as it is known. */
export function placeText(place: Place): string {
	return [place.file, place.line, place.column].filter((part) => part !== undefined).join(':');
}

/** One line: `file:line:column: what is wrong (what was found; what is expected). What to do.` */
export function problemText(problem: Problem): string {
	const where = problem.where ? `${placeText(problem.where)}: ` : '';
	const found = problem.found === undefined ? [] : [`found ${problem.found}`];
	const expected = problem.expected === undefined ? [] : [`expected ${problem.expected}`];
	const aside = [...found, ...expected].join('; ');
	const hint = problem.hint === undefined ? '' : ` ${problem.hint}`;
	return `${where}${problem.what}${aside ? ` (${aside})` : ''}.${hint}`;
}
