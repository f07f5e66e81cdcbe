// `rackside schema`: the JSON Schema of the show file, so that an editor can help in writing one; and those of a
// report's data and of several nights', for those who read it with another program.

import { nightsJsonSchema } from '../../report/nights-shape.ts';
import { reportJsonSchema } from '../../report/report-shape.ts';
import { showFileJsonSchema } from '../../showfile/json-schema.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { nightsKeyTold } from '../../words/nights-keys.ts';
import { reportKeyTold } from '../../words/report-keys.ts';
import { LEAVE_ONE_OUT, notBoth } from '../../words/requests.ts';
import { keyTold } from '../../words/show-file-keys.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { tellProblems } from '../tell-problems.ts';

export const schemaCommand: CliCommand = {
	usage: 'schema',
	about: [COMMAND_WORDS.schema.about],
	example: 'rackside schema > rackside.schema.json',
	options: {
		...JSON_OPTION,
		report: { words: COMMAND_WORDS.schema.options.report },
		nights: { words: COMMAND_WORDS.schema.options.nights },
	},
	words: { least: 0, most: 0 },
	run: async (request, io) => {
		const { report, nights } = request.options;
		if (report === true && nights === true) {
			return tellProblems(
				[{ code: 'two-options', what: notBoth('report', 'nights'), hint: LEAVE_ONE_OUT }],
				io,
			);
		}
		const schema =
			report === true
				? reportJsonSchema(reportKeyTold)
				: nights === true
					? nightsJsonSchema(nightsKeyTold)
					: showFileJsonSchema(keyTold);
		io.write(`${JSON.stringify(schema, null, 2)}\n`);
		return EXIT.fine;
	},
};
