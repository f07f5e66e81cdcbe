// The file format for editors, so that they complete keys, say what each is for and mark slips while a show is
// being written.

import * as z from 'zod/mini';

import { FORMAT } from './format.ts';
import { showFileShape } from './shape.ts';

/** What is told of the key at the end of a path of keys; null where nothing is. */
export type TellKey = (
	path: readonly string[],
) => { readonly description: string; readonly example?: unknown } | null;

export type Schema = Readonly<Record<string, unknown>>;

/**
 * JSON Schema (draft 2020-12) of a show file. Editors read YAML's plain numbers, booleans and dates as
 * such, so wherever a text is read here, those are allowed too. It knows keys and values, not whether
 * an id leads anywhere.
 */
export function showFileJsonSchema(tell: TellKey): Schema {
	const schema = z.toJSONSchema(showFileShape, { target: 'draft-2020-12', io: 'input' });
	const whole = {
		...schema,
		title: `Show file ${FORMAT}`,
		properties: { ...schema.properties, format: { const: FORMAT } },
		required: ['format'],
	};
	return described(whole, [], tell);
}

/** With what is told of each key, however deep; items, branches and names of the user's own add nothing to the path. */
export function described(schema: Schema, path: readonly string[], tell: TellKey): Schema {
	const inner = (one: unknown): unknown =>
		Array.isArray(one)
			? one.map(inner)
			: typeof one === 'object' && one !== null
				? described(one as Schema, path, tell)
				: one;
	const within = Object.fromEntries(
		['items', 'additionalProperties', 'anyOf']
			.filter((name) => name in schema)
			.map((name) => [name, inner(schema[name])]),
	);
	if (typeof schema.properties !== 'object') return { ...schema, ...within };
	const properties = Object.entries(schema.properties as Readonly<Record<string, Schema>>).map(
		([key, one]) => {
			const at = [...path, key];
			const told = tell(at);
			const examples = told?.example === undefined ? {} : { examples: [told.example] };
			const said = told === null ? {} : { description: told.description, ...examples };
			return [key, { ...said, ...described(one, at, tell) }] as const;
		},
	);
	return { ...schema, ...within, properties: Object.fromEntries(properties) };
}
