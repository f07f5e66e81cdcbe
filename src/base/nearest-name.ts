// The known name that a mistyped one was probably meant to be, for hints in problems.

import { distance } from 'fastest-levenshtein';

/** Longer words are no slip of the finger, and comparing them takes long. */
const LONGEST = 64;

/**
 * The name nearest to `word` by edits, case aside, or null when none is near enough to help: one
 * edit from three letters on, one for every three letters from six on, or two letters swapped. Of
 * equally near names the first. The limits are common practice, no source.
 */
export function nearestName(word: string, names: Iterable<string>): string | null {
	const typed = word.normalize('NFC').toLowerCase();
	if (typed.length > LONGEST) return null;
	let best: string | null = null;
	let fewest = Number.POSITIVE_INFINITY;
	for (const name of names) {
		const known = name.normalize('NFC').toLowerCase();
		if (known.length > LONGEST) continue;
		const edits = distance(typed, known);
		if (edits < fewest && isNear(typed, known, edits)) {
			best = name;
			fewest = edits;
		}
	}
	return best;
}

function isNear(typed: string, known: string, edits: number): boolean {
	const isSwapped = edits === 2 && typed.length > 2 && letters(typed) === letters(known);
	return isSwapped || edits <= Math.floor(Math.max(typed.length, known.length) / 3);
}

function letters(text: string): string {
	return [...text].sort().join('');
}
