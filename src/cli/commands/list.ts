// `rackside list`: the set list of a show, in forms that `new` reads back.

import { listCsv, listedShow, listText } from '../../setlist/list-show.ts';
import type { Show } from '../../showfile/show.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { UNKNOWN_LIST_FORM } from '../../words/set-list.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { notAmong } from '../not-among.ts';
import { openShow } from '../open-show.ts';
import { tellProblems } from '../tell-problems.ts';

const FORMS: Readonly<Record<string, (show: Show) => string>> = {
	text: listText,
	csv: listCsv,
	json: (show) => `${JSON.stringify(listedShow(show))}\n`,
};

export const listCommand: CliCommand = {
	usage: 'list SHOW',
	about: [COMMAND_WORDS.list.about],
	example: 'rackside list shows/club.yaml --as csv',
	options: {
		...JSON_OPTION,
		as: { value: 'FORM', oneOf: Object.keys(FORMS), words: COMMAND_WORDS.list.options.as },
	},
	words: { least: 1, most: 1 },
	run: async (request, io) => {
		const form = request.options.json === true ? 'json' : (optionText(request, 'as') ?? 'text');
		const print = Object.hasOwn(FORMS, form) ? FORMS[form] : undefined;
		if (!print) {
			const unknown = { code: 'unknown-form', what: UNKNOWN_LIST_FORM, found: form };
			return tellProblems([notAmong(unknown, Object.keys(FORMS))], io);
		}
		const { show, problems } = await openShow(request.words[0] ?? '', request, io);
		if (!show) return tellProblems(problems, io);
		io.write(print(show));
		return EXIT.fine;
	},
};
