// The log narrowed to the lines that somebody looks for: all words typed must be in a line, whatever
// their case and order.

/** Whether a line is among those looked for; every line is while nothing is. */
export function isLookedFor(line: string, words: string): boolean {
	const text = line.toLowerCase();
	return words
		.toLowerCase()
		.split(/\s+/)
		.every((word) => text.includes(word));
}
