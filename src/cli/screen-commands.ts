// The commands that open the live screen, loaded together with it.

import type { CliCommand } from './command.ts';
import { followCommand } from './commands/follow.ts';
import { runCommand } from './commands/run.ts';
import { startCommand } from './commands/start.ts';

export const SCREEN_COMMANDS = {
	run: runCommand,
	follow: followCommand,
	start: startCommand,
} as const satisfies Readonly<Record<string, CliCommand>>;
