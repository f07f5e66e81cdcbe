// The other commands that print and end, loaded together.

import type { CliCommand } from './command.ts';
import { doctorCommand } from './commands/doctor.ts';
import { faultCommand } from './commands/fault.ts';
import { nightsCommand } from './commands/nights.ts';
import { settingsCommand } from './commands/settings.ts';
import { setupCommand } from './commands/setup.ts';
import { timesCommand } from './commands/times.ts';
import { tomorrowCommand } from './commands/tomorrow.ts';

export const PRINTED_COMMANDS = {
	setup: setupCommand,
	fault: faultCommand,
	tomorrow: tomorrowCommand,
	times: timesCommand,
	nights: nightsCommand,
	settings: settingsCommand,
	doctor: doctorCommand,
} as const satisfies Readonly<Record<string, CliCommand>>;

export type PrintedName = keyof typeof PRINTED_COMMANDS;

// Asked for by `plan`, and here with all else that makes pages and reads nights.
export { sheetBeforeDoors } from '../report/sheet-before-doors.ts';
// It completes every command, and is told of them.
export { completionCommand } from './commands/completion.ts';
export { tellTonight } from './sheet/plan-tonight.ts';
export { printSheet } from './sheet/print-sheet.ts';
