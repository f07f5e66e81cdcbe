// The commands that read a show, plan nothing, print and end, loaded together: finding a file takes longer than most
// of what is in it. Nothing here may load what plans, moves machines or keeps nights.

import type { CliCommand } from './command.ts';
import { listCommand } from './commands/list.ts';
import { rigCommand } from './commands/rig.ts';
import { stringsCommand } from './commands/strings.ts';
import { tuningCommand } from './commands/tuning.ts';

export const SHOW_COMMANDS = {
	list: listCommand,
	tuning: tuningCommand,
	strings: stringsCommand,
	rig: rigCommand,
} as const satisfies Readonly<Record<string, CliCommand>>;

export type ShowName = keyof typeof SHOW_COMMANDS;

// Asked for where a show may have to be read: a new night, the page of a start.
export { openShow, readBytes } from './open-show.ts';
