// Plain questions on the terminal, a line each.

import { createInterface } from 'node:readline/promises';
import type { Io } from './io.ts';
import { LeftQuestion } from './left-question.ts';
import { terminalText } from './terminal-text.ts';

/** Asks a question and gives back the line that was typed; null where nobody can be asked. */
export type Ask = (question: string) => Promise<string | null>;

/** For those who are not to be asked. */
export const askNobody: Ask = async () => null;

/** Asks where there is somebody to ask; Ctrl-C throws a `LeftQuestion`. */
export function askOnTerminal(io: Io): Ask {
	return async (question) => {
		if (!io.isInputTerminal || !io.isOutputTerminal) return null;
		const lines = createInterface({ input: process.stdin, output: process.stdout });
		const leaving = new AbortController();
		lines.on('SIGINT', () => leaving.abort());
		try {
			return await lines.question(terminalText(question, io), { signal: leaving.signal });
		} catch {
			// What is said next begins a line of its own.
			io.write('\n');
			if (leaving.signal.aborted) throw new LeftQuestion();
			// Ctrl-D, or the terminal is gone: as if nothing had been typed.
			return null;
		} finally {
			lines.close();
		}
	};
}
