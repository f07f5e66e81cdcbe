// Starts the small program of the terminal tests, and cleans up after it.

import { afterEach } from 'vitest';
import type { PtyScreen } from './pty-screen.ts';
import { startPtyScreen } from './pty-screen.ts';

const PROGRAM = 'tests/terminal/programs/shown-keys.ts';
const open: PtyScreen[] = [];

/** Gives back the program's terminal; started under `sh` when a line of it is given. */
export function shownKeys(
	flags: readonly string[] = [],
	{ line, env = {} }: { line?: string; env?: Record<string, string> } = {},
): PtyScreen {
	const program = [process.execPath, PROGRAM, ...flags];
	const [command = '', ...args] =
		line === undefined ? program : ['sh', '-c', line.replace('PROGRAM', program.join(' '))];
	const screen = startPtyScreen({ command, args, env });
	open.push(screen);
	return screen;
}

/** Ends what a test left running; to be called once in every file that starts programs. */
export function closeAfterEach(): void {
	afterEach(async () => {
		await Promise.all(open.splice(0).map((screen) => screen.close()));
	});
}
