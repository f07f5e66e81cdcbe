// A text from a file as it is quoted in a problem.

import { cleanText } from '../base/clean-text.ts';

/** Longer quotations hide the sentence that they stand in. */
const LONGEST = 40;

/** The text cleaned, on one line, at most 40 characters of it, and `nothing` for an empty one. */
export function shownText(text: string): string {
	const clean = cleanText(text.slice(0, LONGEST * 8)).trim();
	if (clean === '') return 'nothing';
	const points = [...clean];
	return points.length <= LONGEST ? clean : `${points.slice(0, LONGEST - 1).join('')}…`;
}
