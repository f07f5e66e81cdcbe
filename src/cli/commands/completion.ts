// `rackside completion`: what a shell needs to complete rackside's command lines, and the manual page; both from
// the records of the commands.

import { cleanText } from '../../base/clean-text.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { BAD_SHELL, oneOf } from '../../words/requests.ts';
import type { CliCommand, CommandList } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { candidates } from '../shell/complete.ts';
import { manualPage } from '../shell/manual.ts';
import { COMPLETION_FORMS, SHELL_SCRIPTS } from '../shell/shell-scripts.ts';
import { tellProblems } from '../tell-problems.ts';

/** The command, over the list that it stands in itself. */
export function completionCommand(list: CommandList): CliCommand {
	return {
		usage: 'completion SHELL',
		about: [COMMAND_WORDS.completion.about],
		example: 'rackside completion bash >> ~/.bashrc',
		options: { values: { words: COMMAND_WORDS.completion.options.values } },
		words: { least: 1, most: Number.POSITIVE_INFINITY },
		run: async ({ words, options }, io) => {
			if (options.values === true) {
				for (const { value, words: told } of await candidates(words, list, io))
					io.write(`${value}\t${cleanText(told)}\n`);
				return EXIT.fine;
			}
			const [form = ''] = words;
			const script = Object.hasOwn(SHELL_SCRIPTS, form) ? SHELL_SCRIPTS[form] : undefined;
			if (words.length > 1 || (form !== 'man' && script === undefined)) {
				const found = cleanText(words.join(' '));
				const problem = {
					code: 'bad-shell',
					what: BAD_SHELL,
					found,
					expected: oneOf(COMPLETION_FORMS),
				};
				return tellProblems([problem], io);
			}
			io.write(script ?? (await manualPage(list)));
			return EXIT.fine;
		},
	};
}
