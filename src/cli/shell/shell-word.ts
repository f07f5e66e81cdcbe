// A file's name as it can be typed into a shell.

import { cleanText } from '../../base/clean-text.ts';

/** As it is where a shell takes it so, else in quotes. */
export function shellWord(file: string): string {
	return /^[\w./~+-]+$/.test(file) ? file : `'${cleanText(file).replaceAll("'", "'\\''")}'`;
}
