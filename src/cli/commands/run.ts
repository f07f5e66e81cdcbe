// `rackside run`: the live screen.

import { COMMAND_WORDS } from '../../words/commands.ts';
import { type CliCommand, optionText } from '../command.ts';
import { runLive } from '../live/live.ts';

export const runCommand: CliCommand = {
	usage: 'run SHOW',
	about: [COMMAND_WORDS.run.about],
	example: 'rackside run shows/club.yaml',
	options: {
		anew: { words: COMMAND_WORDS.run.options.anew },
		midi: { value: 'PORT', words: COMMAND_WORDS.run.options.midi },
	},
	words: { least: 1, most: 1 },
	run: (request, io) => {
		const [file = ''] = request.words;
		const midi = optionText(request, 'midi');
		return runLive({ file, request, speed: 1, isRehearsal: false, midi }, io);
	},
};
