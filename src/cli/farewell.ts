// What is said on the plain terminal after the live screen was left: where the night stands, and what
// to type next.

import { cleanText } from '../base/clean-text.ts';
import { nightOpen, rehearsalOpen, SHOW_OVER } from '../words/program.ts';

export type Leaving = {
	/** The show file as it was typed. */
	readonly file: string;
	readonly isRehearsal: boolean;
	/** The show was ended. */
	readonly isOver: boolean;
};

/** One line, whatever the reason for leaving. */
export function farewell({ file, isRehearsal, isOver }: Leaving): string {
	if (isOver) return `${SHOW_OVER}\n`;
	const typed = /^[\w./~+-]+$/.test(file) ? file : `'${cleanText(file).replaceAll("'", "'\\''")}'`;
	return `${isRehearsal ? rehearsalOpen(typed) : nightOpen(typed)}\n`;
}
