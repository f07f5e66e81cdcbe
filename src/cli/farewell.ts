// What is said on the plain terminal after the live screen was left: where the night stands, and what
// to type next.

import { cleanText } from '../base/clean-text.ts';

export type Leaving = {
	/** The show file as it was typed. */
	readonly file: string;
	readonly isRehearsal: boolean;
	/** The show was ended. */
	readonly isOver: boolean;
};

/** One line, whatever the reason for leaving. */
export function farewell({ file, isRehearsal, isOver }: Leaving): string {
	if (isOver) return 'The show is over; rackside report prints the report.\n';
	const typed = /^[\w./~+-]+$/.test(file) ? file : `'${cleanText(file).replaceAll("'", "'\\''")}'`;
	return isRehearsal
		? `The rehearsal stays open; rackside rehearse ${typed} takes it up.\n`
		: `The night stays open; rackside or rackside run ${typed} takes it up.\n`;
}
