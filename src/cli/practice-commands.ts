// The commands that play nights which nobody keeps, loaded together with the screen and the reader of shows.

import type { CliCommand } from './command.ts';
import { drillCommand } from './commands/drill.ts';
import { rehearseCommand } from './commands/rehearse.ts';
import { walkCommand } from './commands/walk.ts';

export const PRACTICE_COMMANDS = {
	rehearse: rehearseCommand,
	walk: walkCommand,
	drill: drillCommand,
} as const satisfies Readonly<Record<string, CliCommand>>;

export type PracticeName = keyof typeof PRACTICE_COMMANDS;
