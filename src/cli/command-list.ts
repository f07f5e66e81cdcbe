// Every command by name: what it does in a few words, and where it is. The live screen and what prints and
// ends are loaded apart, since each needs another part of the program.

import type { CliCommand } from './command.ts';
import type { PrintedName } from './printed-commands.ts';

export type ListedCommand = {
	readonly usage: string;
	readonly words: string;
	readonly load: () => Promise<CliCommand>;
};

const printed = (name: PrintedName) => async () =>
	(await import('./printed-commands.ts')).PRINTED_COMMANDS[name];

/** In the order in which a show meets them. */
export const COMMANDS: Readonly<Record<string, ListedCommand>> = {
	run: {
		usage: 'run SHOW',
		words: 'the live screen; an unfinished night of this show is taken up where it stood',
		load: async () => (await import('./commands/run.ts')).runCommand,
	},
	check: {
		usage: 'check SHOW',
		words: 'everything wrong or risky in a show before the doors open',
		load: printed('check'),
	},
	plan: {
		usage: 'plan SHOW',
		words: 'who plays what when, the work between, backups; --sheet for the run sheet',
		load: printed('plan'),
	},
	tuning: {
		usage: 'tuning SHOW INSTRUMENT',
		words: 'targets, steps and tensions from one tuning to another',
		load: printed('tuning'),
	},
	strings: {
		usage: 'strings SHOW INSTRUMENT',
		words: 'what each string bears, how near to breaking, which gauge feels the same',
		load: printed('strings'),
	},
	setup: {
		usage: 'setup SHOW INSTRUMENT',
		words: 'saddle moves, targets, what drifted; --record keeps what was measured',
		load: printed('setup'),
	},
	rehearse: {
		usage: 'rehearse SHOW',
		words: 'timed keys from a script, or the live screen on a faster clock',
		load: printed('rehearse'),
	},
	report: {
		usage: 'report [NIGHT]',
		words: 'the post-show report of a night, the last one unless named',
		load: printed('report'),
	},
	nights: {
		usage: 'nights',
		words: 'the nights recorded, with their state',
		load: printed('nights'),
	},
	settings: {
		usage: 'settings [NAME [VALUE]]',
		words: 'shows, sets and resets preferences; where files are',
		load: printed('settings'),
	},
	schema: {
		usage: 'schema',
		words: 'JSON Schema of the show file, for editors',
		load: printed('schema'),
	},
};

/** What a start without a command does. */
export const START: ListedCommand = {
	usage: '',
	words: 'offers the unfinished night, the last show and the example show',
	load: async () => (await import('./commands/start.ts')).startCommand,
};
