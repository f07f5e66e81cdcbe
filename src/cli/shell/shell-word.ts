// A file's name as it can be typed into a shell.

import { cleanText } from '../../base/clean-text.ts';

/** As it is where a shell of the platform takes it so, else in quotes. */
export function shellWord(file: string, platform: string = process.platform): string {
	if (platform === 'win32') {
		return /^[\w./\\:~+-]+$/.test(file) ? file : `"${cleanText(file)}"`;
	}
	return /^[\w./~+-]+$/.test(file) ? file : `'${cleanText(file).replaceAll("'", "'\\''")}'`;
}
