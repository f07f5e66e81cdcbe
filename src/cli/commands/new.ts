// `rackside new`: a show file from what is there already.

import { COMMAND_WORDS } from '../../words/commands.ts';
import type { CliCommand } from '../command.ts';
import { tellProblems } from '../tell-problems.ts';
import { bringsList, NO_LIST, newFromList } from './new-from-list.ts';

const { about, options } = COMMAND_WORDS.new;

export const newCommand: CliCommand = {
	usage: 'new [FILE]',
	about: [about],
	example: 'rackside new friday.yaml --songs list.csv',
	options: {
		songs: { value: 'FILE', words: options.songs },
		list: { value: 'FILE', words: options.list },
		column: { value: 'HEADING=PLAYER', words: options.column, isRepeated: true },
		rack: { value: 'FILE', words: options.rack },
		add: { words: options.add },
		json: { words: options.json },
	},
	words: { least: 0, most: 1 },
	run: (request, io) =>
		bringsList(request) ? newFromList(request, io) : tellProblems([NO_LIST], io),
};
