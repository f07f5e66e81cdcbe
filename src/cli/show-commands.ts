// The commands that read a show, print and end, loaded together: finding a file takes longer than most of what
// is in it. Nothing here may load what keeps nights.

import './loaded-together.ts';
import type { CliCommand } from './command.ts';
import { checkCommand } from './commands/check.ts';
import { faultCommand } from './commands/fault.ts';
import { listCommand } from './commands/list.ts';
import { planCommand } from './commands/plan.ts';
import { rigCommand } from './commands/rig.ts';
import { stringsCommand } from './commands/strings.ts';
import { tuningCommand } from './commands/tuning.ts';

export const SHOW_COMMANDS = {
	list: listCommand,
	check: checkCommand,
	plan: planCommand,
	tuning: tuningCommand,
	strings: stringsCommand,
	rig: rigCommand,
	fault: faultCommand,
} as const satisfies Readonly<Record<string, CliCommand>>;

export type ShowName = keyof typeof SHOW_COMMANDS;

// Asked for by a start without a terminal.
export { planShow } from './commands/plan.ts';
// Asked for where a show may have to be read: a new night, the page of a start.
export { openShow, readBytes } from './open-show.ts';
