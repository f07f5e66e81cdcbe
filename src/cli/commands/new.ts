// `rackside new`: a show file from answers.

import { resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { fileThere } from '../../words/new-show.ts';
import { type CliCommand, JSON_OPTION, optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { newByQuestions } from './new-by-questions.ts';
import { newFromNight } from './new-from-night.ts';

export const newCommand: CliCommand = {
	usage: 'new [FILE]',
	about: [COMMAND_WORDS.new.about],
	example: 'rackside new',
	options: { ...JSON_OPTION, from: { value: 'NIGHT', words: COMMAND_WORDS.new.options.from } },
	words: { least: 0, most: 1 },
	run: (request, io) => {
		const file = request.words[0] ?? null;
		if (file !== null && realDisk.stat(resolve(io.cwd, file)) !== null) {
			io.complain(`${fileThere(cleanText(file))}\n`);
			return EXIT.unusable;
		}
		const from = optionText(request, 'from');
		return from === null
			? newByQuestions({ file }, request, io)
			: newFromNight({ file, from }, request, io);
	},
};
