// Whether a start does no more than read a show file and print what is asked of it: then the program as one file runs
// a text with just that in it.

import { commandPlace } from '../command-place.ts';
import type { PlanName } from '../plan-commands.ts';
import type { ShowName } from '../show-commands.ts';

const NAMES: Readonly<Record<ShowName | PlanName, true>> = {
	list: true,
	check: true,
	plan: true,
	tuning: true,
	strings: true,
	rig: true,
};

/** All others ask for the sheet, which takes more of the program. */
const OPTIONS_OF_PLAN: readonly string[] = ['--json', '--why', '--data'];

/** Whether this command line asks for nothing beyond the show commands and the plan. */
export function readsShowOnly(argv: readonly string[]): boolean {
	const place = commandPlace(argv);
	const name = place === null ? '' : (argv[place] ?? '');
	if (!Object.hasOwn(NAMES, name)) return false;
	const options = argv.filter((one) => one.startsWith('-')).map((one) => one.replace(/=.*/s, ''));
	return name !== 'plan' || options.every((one) => OPTIONS_OF_PLAN.includes(one));
}
