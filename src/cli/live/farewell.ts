// What is said on the plain terminal after the live screen was left: where the night stands, and what
// to type next.

import { cleanText } from '../../base/clean-text.ts';
import type { SavePlace } from '../../journal/night-journal.ts';
import { leftElsewhere, wipedHomeWords } from '../../words/disk.ts';
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
	/** Its own folder, where a restart of the machine empties that; else null. */
	readonly wipedHome: string | null;
	/** What is to be known of its own folder besides, a sentence; null for nothing. */
	readonly remark: string | null;
};

/** One line, whatever the reason for leaving, and one more where the night is not as safe as it should be. */
export function farewell({ file, isRehearsal, isOver, ...left }: Leaving): string {
	const words = unsafeWords(left);
	const where = words === null ? '' : `${cleanText(words)}\n`;
	if (isOver) return `${SHOW_OVER}\n${where}`;
	const typed = shellWord(file);
	return `${isRehearsal ? rehearsalOpen(typed) : nightOpen(typed)}\n${where}`;
}

/** Why the night is not as safe as it should be; null where it is. */
function unsafeWords({
	elsewhere,
	wipedHome,
	remark,
}: Pick<Leaving, 'elsewhere' | 'wipedHome' | 'remark'>): string | null {
	if (elsewhere !== null) return leftElsewhere(elsewhere);
	return remark ?? (wipedHome && wipedHomeWords(wipedHome));
}
