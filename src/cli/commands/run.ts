// `rackside run`: the live screen.

import { COMMAND_WORDS } from '../../words/commands.ts';
import type { CliCommand } from '../command.ts';
import { runLive } from '../live.ts';

export const runCommand: CliCommand = {
	usage: 'run SHOW',
	about: [COMMAND_WORDS.run.about],
	example: 'rackside run shows/club.yaml',
	options: { anew: { words: COMMAND_WORDS.run.options.anew } },
	words: { least: 1, most: 1 },
	run: (request, io) => {
		return runLive({ file: request.words[0] ?? '', request, speed: 1, isRehearsal: false }, io);
	},
};
