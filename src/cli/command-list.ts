// Every command by name: what it does in a few words, and where it is. A command is loaded only when
// it is asked for, since each needs another part of the program.

import type { CliCommand } from './command.ts';

export type ListedCommand = {
	readonly usage: string;
	readonly words: string;
	readonly load: () => Promise<CliCommand>;
};

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
		load: async () => (await import('./commands/check.ts')).checkCommand,
	},
	plan: {
		usage: 'plan SHOW',
		words: 'who plays what when, the work between, backups; --sheet for the run sheet',
		load: async () => (await import('./commands/plan.ts')).planCommand,
	},
	tuning: {
		usage: 'tuning SHOW INSTRUMENT',
		words: 'targets, steps and tensions from one tuning to another',
		load: async () => (await import('./commands/tuning.ts')).tuningCommand,
	},
	strings: {
		usage: 'strings SHOW INSTRUMENT',
		words: 'what each string bears, how near to breaking, which gauge feels the same',
		load: async () => (await import('./commands/strings.ts')).stringsCommand,
	},
	setup: {
		usage: 'setup SHOW INSTRUMENT',
		words: 'saddle moves, targets, what drifted; --record keeps what was measured',
		load: async () => (await import('./commands/setup.ts')).setupCommand,
	},
	rehearse: {
		usage: 'rehearse SHOW',
		words: 'timed keys from a script, or the live screen on a faster clock',
		load: async () => (await import('./commands/rehearse.ts')).rehearseCommand,
	},
	report: {
		usage: 'report [NIGHT]',
		words: 'the post-show report of a night, the last one unless named',
		load: async () => (await import('./commands/report.ts')).reportCommand,
	},
	nights: {
		usage: 'nights',
		words: 'the nights recorded, with their state',
		load: async () => (await import('./commands/nights.ts')).nightsCommand,
	},
	settings: {
		usage: 'settings [NAME [VALUE]]',
		words: 'shows, sets and resets preferences; where files are',
		load: async () => (await import('./commands/settings.ts')).settingsCommand,
	},
	schema: {
		usage: 'schema',
		words: 'JSON Schema of the show file, for editors',
		load: async () => (await import('./commands/schema.ts')).schemaCommand,
	},
};

/** What a start without a command does. */
export const START: ListedCommand = {
	usage: '',
	words: 'offers the unfinished night, the last show and the example show',
	load: async () => (await import('./commands/start.ts')).startCommand,
};
