// `rackside run`: the live screen.

import type { CliCommand } from '../command.ts';

export const runCommand: CliCommand = {
	usage: 'run SHOW',
	about: [
		'Opens the live screen for a show. An unfinished night of this show is taken up where it stood.',
		'Press ? there for all keys, q to leave.',
	],
	example: 'rackside run shows/club.yaml',
	options: {},
	words: { least: 1, most: 1 },
	run: async (request, io) => {
		const { runLive } = await import('../live.ts');
		return runLive({ file: request.words[0] ?? '', request, speed: 1, isRehearsal: false }, io);
	},
};
