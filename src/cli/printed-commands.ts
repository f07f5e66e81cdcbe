// The commands that print and end, loaded together: finding a file takes longer than most of what is in it.

import type { CliCommand } from './command.ts';
import { checkCommand } from './commands/check.ts';
import { nightsCommand } from './commands/nights.ts';
import { planCommand } from './commands/plan.ts';
import { rehearseCommand } from './commands/rehearse.ts';
import { reportCommand } from './commands/report.ts';
import { schemaCommand } from './commands/schema.ts';
import { settingsCommand } from './commands/settings.ts';
import { setupCommand } from './commands/setup.ts';
import { stringsCommand } from './commands/strings.ts';
import { tuningCommand } from './commands/tuning.ts';

export const PRINTED_COMMANDS = {
	check: checkCommand,
	plan: planCommand,
	tuning: tuningCommand,
	strings: stringsCommand,
	setup: setupCommand,
	rehearse: rehearseCommand,
	report: reportCommand,
	nights: nightsCommand,
	settings: settingsCommand,
	schema: schemaCommand,
} as const satisfies Readonly<Record<string, CliCommand>>;

export type PrintedName = keyof typeof PRINTED_COMMANDS;
