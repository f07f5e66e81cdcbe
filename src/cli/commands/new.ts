// `rackside new`: a show file from answers.

import { COMMAND_WORDS } from '../../words/commands.ts';
import type { CliCommand } from '../command.ts';
import { newByQuestions } from './new-by-questions.ts';

export const newCommand: CliCommand = {
	usage: 'new [FILE]',
	about: [COMMAND_WORDS.new.about],
	example: 'rackside new',
	options: {},
	words: { least: 0, most: 1 },
	run: (request, io) => newByQuestions(request.words[0] ?? null, request, io),
};
