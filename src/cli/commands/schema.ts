// `rackside schema`: the JSON Schema of the show file, so that an editor can help in writing one; and that of a
// report's data, for those who read it with another program.

import { showFileJsonSchema } from '../../showfile/json-schema.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { reportKeyTold } from '../../words/report-keys.ts';
import { keyTold } from '../../words/show-file-keys.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION } from '../command.ts';
import { EXIT } from '../exit-code.ts';

export const schemaCommand: CliCommand = {
	usage: 'schema',
	about: [COMMAND_WORDS.schema.about],
	example: 'rackside schema > rackside.schema.json',
	options: { ...JSON_OPTION, report: { words: COMMAND_WORDS.schema.options.report } },
	words: { least: 0, most: 0 },
	run: async (request, io) => {
		const schema =
			request.options.report === true ? await reportSchema() : showFileJsonSchema(keyTold);
		io.write(`${JSON.stringify(schema, null, 2)}\n`);
		return EXIT.fine;
	},
};

/** Loaded when it is asked for: it stands beside commands that need none of it. */
async function reportSchema(): Promise<unknown> {
	const { reportJsonSchema } = await import('../../report/report-shape.ts');
	return reportJsonSchema(reportKeyTold);
}
