// What is said on the plain terminal after the live screen was left: where the night stands, and what
// to type next.

import { cleanText } from '../../base/clean-text.ts';
import type { SavePlace } from '../../journal/night-journal.ts';
import { leftElsewhere } from '../../words/disk.ts';
import { nightOpen, rehearsalOpen, SHOW_OVER } from '../../words/program.ts';
import { shellWord } from '../shell/shell-word.ts';

export type Leaving = {
	/** The show file as it was typed. */
	readonly file: string;
	readonly isRehearsal: boolean;
	/** The show was ended. */
	readonly isOver: boolean;
	/** Where the night is kept that its own folder did not take. */
	readonly elsewhere: SavePlace | null;
	/** What is to be known of its own folder, a sentence; null for nothing. */
	readonly remark: string | null;
};

/** One line, whatever the reason for leaving, and one more where the night is not as safe as it should be. */
export function farewell({ file, isRehearsal, isOver, elsewhere, remark }: Leaving): string {
	const words = elsewhere === null ? remark : leftElsewhere(elsewhere);
	const where = words === null ? '' : `${cleanText(words)}\n`;
	if (isOver) return `${SHOW_OVER}\n${where}`;
	const typed = shellWord(file);
	return `${isRehearsal ? rehearsalOpen(typed) : nightOpen(typed)}\n${where}`;
}
