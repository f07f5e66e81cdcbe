// The file format for editors, so that they complete keys and mark slips while a show is being written.

import * as z from 'zod/mini';

import { FORMAT } from './format.ts';
import { showFileShape } from './shape.ts';

/**
 * JSON Schema (draft 2020-12) of a show file. Editors read YAML's plain numbers, booleans and dates as
 * such, so wherever a text is read here, those are allowed too. It knows keys and values, not whether
 * an id leads anywhere.
 */
export function showFileJsonSchema(): Record<string, unknown> {
	const schema = z.toJSONSchema(showFileShape, { target: 'draft-2020-12', io: 'input' });
	return {
		...schema,
		title: `Show file ${FORMAT}`,
		properties: { ...schema.properties, format: { const: FORMAT } },
		required: ['format'],
	};
}
