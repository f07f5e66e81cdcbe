// Every command by name: what it does in a few words, and where it is. Commands are loaded in parts, since each
// part needs another half of the program: what reads a show, what plans it, what else prints, the live screen,
// practice. A part of its own for each command would cut the bundle into so many files that finding them takes longer
// than running them.

import { COMMAND_WORDS } from '../words/commands.ts';
import type { ListedCommand } from './command.ts';
import type { PlanName } from './plan-commands.ts';
import type { PracticeName } from './practice-commands.ts';
import type { PrintedName } from './printed-commands.ts';
import type { ShowName } from './show-commands.ts';

const ofShow = (name: ShowName) => async () =>
	(await import('./show-commands.ts')).SHOW_COMMANDS[name];

const planned = (name: PlanName) => async () =>
	(await import('./plan-commands.ts')).PLAN_COMMANDS[name];

const printed = (name: PrintedName) => async () =>
	(await import('./printed-commands.ts')).PRINTED_COMMANDS[name];

const practice = (name: PracticeName) => async () =>
	(await import('./practice-commands.ts')).PRACTICE_COMMANDS[name];

/** In the order in which a show meets them. */
export const COMMANDS: Readonly<Record<string, ListedCommand>> = {
	run: {
		usage: 'run SHOW',
		words: COMMAND_WORDS.run.brief,
		load: async () => (await import('./screen-commands.ts')).SCREEN_COMMANDS.run,
	},
	follow: {
		usage: 'follow [NIGHT]',
		words: COMMAND_WORDS.follow.brief,
		load: async () => (await import('./screen-commands.ts')).SCREEN_COMMANDS.follow,
	},
	new: {
		usage: 'new [FILE]',
		words: COMMAND_WORDS.new.brief,
		load: async () => (await import('./commands/new.ts')).newCommand,
	},
	list: {
		usage: 'list SHOW',
		words: COMMAND_WORDS.list.brief,
		load: ofShow('list'),
	},
	check: {
		usage: 'check SHOW',
		words: COMMAND_WORDS.check.brief,
		load: planned('check'),
	},
	plan: {
		usage: 'plan SHOW',
		words: COMMAND_WORDS.plan.brief,
		load: planned('plan'),
	},
	tuning: {
		usage: 'tuning SHOW INSTRUMENT',
		words: COMMAND_WORDS.tuning.brief,
		load: ofShow('tuning'),
	},
	strings: {
		usage: 'strings SHOW INSTRUMENT',
		words: COMMAND_WORDS.strings.brief,
		load: ofShow('strings'),
	},
	setup: {
		usage: 'setup SHOW INSTRUMENT',
		words: COMMAND_WORDS.setup.brief,
		load: printed('setup'),
	},
	rig: {
		usage: 'rig SHOW',
		words: COMMAND_WORDS.rig.brief,
		load: ofShow('rig'),
	},
	fault: {
		usage: 'fault SHOW PLAYER',
		words: COMMAND_WORDS.fault.brief,
		load: printed('fault'),
	},
	rehearse: {
		usage: 'rehearse SHOW',
		words: COMMAND_WORDS.rehearse.brief,
		load: practice('rehearse'),
	},
	walk: {
		usage: 'walk',
		words: COMMAND_WORDS.walk.brief,
		load: practice('walk'),
	},
	drill: {
		usage: 'drill [SHOW]',
		words: COMMAND_WORDS.drill.brief,
		load: practice('drill'),
	},
	report: {
		usage: 'report [NIGHT]',
		words: COMMAND_WORDS.report.brief,
		load: async () => (await import('./commands/report.ts')).reportCommand,
	},
	tomorrow: {
		usage: 'tomorrow [NIGHT...]',
		words: COMMAND_WORDS.tomorrow.brief,
		load: printed('tomorrow'),
	},
	times: {
		usage: 'times [NIGHT...]',
		words: COMMAND_WORDS.times.brief,
		load: printed('times'),
	},
	nights: {
		usage: 'nights',
		words: COMMAND_WORDS.nights.brief,
		load: printed('nights'),
	},
	settings: {
		usage: 'settings [NAME [VALUE]]',
		words: COMMAND_WORDS.settings.brief,
		load: printed('settings'),
	},
	doctor: {
		usage: 'doctor',
		words: COMMAND_WORDS.doctor.brief,
		load: printed('doctor'),
	},
	schema: {
		usage: 'schema',
		words: COMMAND_WORDS.schema.brief,
		load: async () => (await import('./commands/schema.ts')).schemaCommand,
	},
	completion: {
		usage: 'completion SHELL',
		words: COMMAND_WORDS.completion.brief,
		load: async () =>
			(await import('./printed-commands.ts')).completionCommand({
				commands: COMMANDS,
				start: START,
			}),
	},
};

/** What a start without a command does. */
export const START: ListedCommand = {
	usage: '',
	words: COMMAND_WORDS.start.brief,
	load: async () => (await import('./screen-commands.ts')).startCommand(COMMANDS),
};
