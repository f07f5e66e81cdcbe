// The commands that open the live screen, loaded together with it.

import type { CliCommand } from './command.ts';
import { followCommand } from './commands/follow.ts';
import { runCommand } from './commands/run.ts';

export const SCREEN_COMMANDS = {
	run: runCommand,
	follow: followCommand,
} as const satisfies Readonly<Record<string, CliCommand>>;

// A start without a command leads to others, and is told of them.
export { startCommand } from './commands/start.ts';
