// How many cells a terminal really fills with a text, by asking where its cursor is afterwards.

import type { Clock } from './clock.ts';
import type { InputStream } from './input-source.ts';

export type WidthTrial = {
	readonly stdin: InputStream;
	readonly write: (text: string) => unknown;
	readonly clock: Pick<Clock, 'after'>;
};

/** A terminal that has not answered by then does not; over a slow link a reply takes a good part of it. */
const ANSWER_MS = 1000;

/** Asks for the cursor's place (ECMA-48, 8.3.35 DSR), which comes as CPR (8.3.14), and empties the line again. */
const ASK = '\u001B[6n';
const EMPTY_LINE = '\r\u001B[K';
// biome-ignore lint/suspicious/noControlCharactersInRegex: a reply begins with one.
const REPLY = /\u001B\[\d+;(\d+)R/;

/** Cells that the text fills in a row of its own; null where the terminal does not say. */
export function drawnWidth(
	text: string,
	{ stdin, write, clock }: WidthTrial,
): Promise<number | null> {
	return new Promise((resolve) => {
		let reply = '';
		const answer = (cells: number | null): void => {
			cancel();
			stdin.off('data', onData);
			stdin.pause();
			stdin.setRawMode?.(false);
			write(EMPTY_LINE);
			resolve(cells);
		};
		const onData = (bytes: Uint8Array | string): void => {
			reply += typeof bytes === 'string' ? bytes : new TextDecoder('latin1').decode(bytes);
			const column = REPLY.exec(reply)?.[1];
			if (column !== undefined) answer(Number(column) - 1);
		};
		const cancel = clock.after(ANSWER_MS, () => answer(null));
		stdin.setRawMode?.(true);
		stdin.on('data', onData);
		stdin.resume();
		write(`\r${text}${ASK}`);
	});
}
