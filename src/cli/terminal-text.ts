// Sentences on a terminal, broken between words: a terminal alone breaks them anywhere.

import { wrapWords } from '../base/wrap-words.ts';
import type { Io } from './io.ts';

const USUAL_COLUMNS = 80;

/** The text for standard output: as it is where something else reads it, else with its lines wrapped to the window. */
export function terminalText(
	text: string,
	{ isOutputTerminal }: Pick<Io, 'isOutputTerminal'>,
	given?: number,
): string {
	if (!isOutputTerminal) return text;
	const columns = given ?? (process.stdout.columns || USUAL_COLUMNS);
	return text
		.split('\n')
		.map((line) => wrapWords(line, columns).join('\n'))
		.join('\n');
}
