// A name that is none of those there are: told with all of them, or with where they are listed, and with the one
// that was probably meant.

import { cleanText } from '../base/clean-text.ts';
import { nearestName } from '../base/nearest-name.ts';
import type { Problem } from '../base/problem.ts';
import { didYouMean } from '../words/requests.ts';

export type Unknown = {
	readonly code: string;
	readonly what: string;
	/** As it was typed. */
	readonly found: string;
	/** What says the names where there are too many to say them here; said where none is near. */
	readonly listedBy?: string;
};

/** The problem of a name that is not among these. */
export function notAmong(
	{ code, what, found, listedBy }: Unknown,
	names: readonly string[],
): Problem {
	const near = nearestName(found, names);
	const hint = near === null ? listedBy : didYouMean(cleanText(near));
	return {
		code,
		what,
		found: cleanText(found),
		...(listedBy === undefined &&
			names.length > 0 && { expected: names.map((name) => cleanText(name)).join(', ') }),
		...(hint !== undefined && { hint }),
	};
}
