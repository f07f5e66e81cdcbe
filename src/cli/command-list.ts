// Every command by name: what it does in a few words, and where it is. A command is loaded only when
// it is asked for, since each needs another part of the program.

import { COMMAND_WORDS } from '../words/commands.ts';
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
		words: COMMAND_WORDS.run.brief,
		load: async () => (await import('./commands/run.ts')).runCommand,
	},
	check: {
		usage: 'check SHOW',
		words: COMMAND_WORDS.check.brief,
		load: async () => (await import('./commands/check.ts')).checkCommand,
	},
	plan: {
		usage: 'plan SHOW',
		words: COMMAND_WORDS.plan.brief,
		load: async () => (await import('./commands/plan.ts')).planCommand,
	},
	tuning: {
		usage: 'tuning SHOW INSTRUMENT',
		words: COMMAND_WORDS.tuning.brief,
		load: async () => (await import('./commands/tuning.ts')).tuningCommand,
	},
	strings: {
		usage: 'strings SHOW INSTRUMENT',
		words: COMMAND_WORDS.strings.brief,
		load: async () => (await import('./commands/strings.ts')).stringsCommand,
	},
	setup: {
		usage: 'setup SHOW INSTRUMENT',
		words: COMMAND_WORDS.setup.brief,
		load: async () => (await import('./commands/setup.ts')).setupCommand,
	},
	rehearse: {
		usage: 'rehearse SHOW',
		words: COMMAND_WORDS.rehearse.brief,
		load: async () => (await import('./commands/rehearse.ts')).rehearseCommand,
	},
	report: {
		usage: 'report [NIGHT]',
		words: COMMAND_WORDS.report.brief,
		load: async () => (await import('./commands/report.ts')).reportCommand,
	},
	nights: {
		usage: 'nights',
		words: COMMAND_WORDS.nights.brief,
		load: async () => (await import('./commands/nights.ts')).nightsCommand,
	},
	settings: {
		usage: 'settings [NAME [VALUE]]',
		words: COMMAND_WORDS.settings.brief,
		load: async () => (await import('./commands/settings.ts')).settingsCommand,
	},
	schema: {
		usage: 'schema',
		words: COMMAND_WORDS.schema.brief,
		load: async () => (await import('./commands/schema.ts')).schemaCommand,
	},
};

/** What a start without a command does. */
export const START: ListedCommand = {
	usage: '',
	words: COMMAND_WORDS.start.brief,
	load: async () => (await import('./commands/start.ts')).startCommand,
};
