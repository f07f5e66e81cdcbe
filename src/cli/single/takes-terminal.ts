// Whether a start has the terminal to watch. Apart from the watching, since most starts have nothing to be watched.

import { commandPlace } from '../command-place.ts';
import type { PlanName } from '../plan-commands.ts';
import type { PrintedName } from '../printed-commands.ts';
import type { ShowName } from '../show-commands.ts';

type Printing = ShowName | PlanName | PrintedName | 'report' | 'schema' | 'completion';

/** Commands that print and end, by whether they may ask something on the terminal; all others are watched. */
const ASKS: Readonly<Record<Printing, boolean>> = {
	list: false,
	check: false,
	plan: false,
	tuning: false,
	strings: false,
	rig: false,
	fault: false,
	setup: true,
	report: false,
	tomorrow: true,
	times: false,
	nights: false,
	settings: false,
	doctor: true,
	schema: false,
	completion: false,
};

/** Whether this command line may switch the terminal's modes. */
export function takesTerminal(argv: readonly string[]): boolean {
	const place = commandPlace(argv);
	if (argv.some((one) => one === '--help' || one === '-h')) return false;
	// The one thing that a report asks for.
	if (argv.includes('--edit')) return true;
	if (place === null) return true;
	const asks: Readonly<Record<string, boolean>> = ASKS;
	const name = argv[place] ?? '';
	return Object.hasOwn(asks, name) ? asks[name] === true : true;
}

/** Whether this process was started by one that watches. */
export function isWatched({
	RACKSIDE_LAUNCHER: launcher,
}: Readonly<Record<string, string | undefined>>): boolean {
	return launcher !== undefined && Number(launcher) === process.ppid;
}
