// `rackside schema`: the JSON Schema of the show file, so that an editor can help in writing one.

import { showFileJsonSchema } from '../../showfile/json-schema.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { keyTold } from '../../words/show-file-keys.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION } from '../command.ts';
import { EXIT } from '../exit-code.ts';

export const schemaCommand: CliCommand = {
	usage: 'schema',
	about: [COMMAND_WORDS.schema.about],
	example: 'rackside schema > rackside.schema.json',
	options: JSON_OPTION,
	words: { least: 0, most: 0 },
	run: (_, io) => {
		io.write(`${JSON.stringify(showFileJsonSchema(keyTold), null, 2)}\n`);
		return EXIT.fine;
	},
};
