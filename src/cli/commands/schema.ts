// `rackside schema`: the JSON Schema of the show file, so that an editor can help in writing one.

import { showFileJsonSchema } from '../../showfile/json-schema.ts';
import type { CliCommand } from '../command.ts';

import { JSON_OPTION } from '../command.ts';
import { EXIT } from '../exit-code.ts';

export const schemaCommand: CliCommand = {
	usage: 'schema',
	about: [
		'Prints the JSON Schema of the show file. Editors that know YAML schemas then offer the keys',
		'and underline mistakes.',
	],
	example: 'rackside schema > rackside.schema.json',
	options: JSON_OPTION,
	words: { least: 0, most: 0 },
	run: (_, io) => {
		io.write(`${JSON.stringify(showFileJsonSchema(), null, 2)}\n`);
		return EXIT.fine;
	},
};
