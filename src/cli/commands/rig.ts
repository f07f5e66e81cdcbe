// `rackside rig`: each player's sound path, its loads, supplies and batteries, and every board by song.

import { cleanText } from '../../base/clean-text.ts';
import { rigJson } from '../../report/rig-json.ts';
import { rigPage } from '../../report/rig-page.ts';
import { checkRig } from '../../rig/check-rig.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { openShow } from '../open-show.ts';
import { tellProblems } from '../tell-problems.ts';

export const rigCommand: CliCommand = {
	usage: 'rig SHOW',
	about: [COMMAND_WORDS.rig.about],
	example: 'rackside rig shows/club.yaml',
	options: JSON_OPTION,
	words: { least: 1, most: 1 },
	run: async (request, io) => {
		const { show, problems } = await openShow(request.words[0] ?? '', request, io);
		if (!show) return tellProblems(problems, io);
		if (request.options.json === true) io.write(`${JSON.stringify(rigJson(show))}\n`);
		else
			io.write(
				rigPage(show)
					.map((line) => `${cleanText(line)}\n`)
					.join(''),
			);
		return checkRig(show).some(({ severity }) => severity === 'risk') ? EXIT.toLookAt : EXIT.fine;
	},
};
