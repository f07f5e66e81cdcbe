// The other commands that print and end, loaded together.

import type { CliCommand } from './command.ts';
import { nightsCommand } from './commands/nights.ts';
import { schemaCommand } from './commands/schema.ts';
import { settingsCommand } from './commands/settings.ts';
import { setupCommand } from './commands/setup.ts';

export const PRINTED_COMMANDS = {
	setup: setupCommand,
	nights: nightsCommand,
	settings: settingsCommand,
	schema: schemaCommand,
} as const satisfies Readonly<Record<string, CliCommand>>;

// Asked for by `plan`, and here with all else that reads nights.
export { tellTonight } from './plan-tonight.ts';

export type PrintedName = keyof typeof PRINTED_COMMANDS;
