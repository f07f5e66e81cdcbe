// The commands that plan a show, print and end, loaded together: they take the same half of the program. Nothing here
// may load what keeps nights.

import type { CliCommand } from './command.ts';
import { checkCommand } from './commands/check.ts';
import { planCommand } from './commands/plan.ts';

export const PLAN_COMMANDS = {
	check: checkCommand,
	plan: planCommand,
} as const satisfies Readonly<Record<string, CliCommand>>;

export type PlanName = keyof typeof PLAN_COMMANDS;

// Asked for by a start without a terminal.
export { planShow } from './commands/plan.ts';
