// Words over lines of a width, for places that are as wide as they are.

import { displayWidth } from './display-width.ts';

/** The text's words in lines of at most `columns` cells; a longer word has a line of its own. */
export function wrapWords(text: string, columns: number): readonly string[] {
	const lines: string[] = [];
	for (const word of text.split(' ')) {
		const last = lines.at(-1);
		if (last !== undefined && displayWidth(`${last} ${word}`) <= columns) {
			lines[lines.length - 1] = `${last} ${word}`;
		} else lines.push(word);
	}
	return lines;
}
