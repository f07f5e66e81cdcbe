// One line of the doctor's, and how the lines are printed.

import { wrapWords } from '../../base/wrap-words.ts';
import { STATES } from '../../words/doctor.ts';

export type DoctorState = 'fine' | 'look' | 'unknown';

export type DoctorLine = {
	readonly what: string;
	readonly state: DoctorState;
	readonly found: string;
	/** What to do, a sentence; null where there is nothing to do. */
	readonly do: string | null;
};

export function fine(what: string, found: string): DoctorLine {
	return { what, state: 'fine', found, do: null };
}

export function look(what: string, found: string, todo: string): DoctorLine {
	return { what, state: 'look', found, do: todo };
}

/** What this system does not tell, with where to look for it. */
export function unknown(what: string, found: string, todo: string | null): DoctorLine {
	return { what, state: 'unknown', found, do: todo };
}

const WIDTH = 80;
const STATE_COLUMNS = 9;
const WHAT_COLUMNS = 15;

/** The line as it is printed, on as many rows as it needs. */
export function lineText({ what, state, found, do: todo }: DoctorLine): string {
	const head = STATES[state].padEnd(STATE_COLUMNS) + what.padEnd(WHAT_COLUMNS);
	const room = WIDTH - head.length;
	// What is found may be a sentence already.
	const words = todo === null ? found : `${found.replace(/\.$/, '')}. ${todo}`;
	const rows = wrapWords(words, room);
	return rows
		.map((row, index) => `${index === 0 ? head : ' '.repeat(head.length)}${row}\n`)
		.join('');
}
