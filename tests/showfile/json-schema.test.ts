// The schema for editors, held against an independent validator (ajv, JSON Schema draft 2020-12) and YAML's
// own reading, in which numbers and booleans are what editors take them for.

import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { showFileJsonSchema } from '../../src/showfile/json-schema.ts';
import { keyTold } from '../../src/words/show-file-keys.ts';

const SCHEMA = showFileJsonSchema(keyTold);
const ajv = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true });
const validate = ajv.compile(SCHEMA);
const SHOWS = new URL('../../shows/', import.meta.url);
const BAD = new URL('../bad-shows/', import.meta.url);

describe('the schema of show files', () => {
	it.each(readdirSync(SHOWS).filter((name) => name !== 'club-gear.yaml'))('accepts %s', (name) => {
		validate(parse(readFileSync(new URL(name, SHOWS), 'utf8')));
		expect(validate.errors ?? []).toEqual([]);
	});

	it.each([
		[
			'numbers where words are read',
			'format: rackside/1\nsongs: [{id: 7, title: 1.10, tempo: 104}]',
		],
		[
			'truth where yes is read',
			'format: rackside/1\ninstruments: [{id: A, kind: other, tuning: x, spare: true}]',
		],
		['truth where on is read', 'format: rackside/1\nsongs: [{id: a, board: {bo: {drive: true}}}]'],
		[
			'a slot that is a digit',
			'format: rackside/1\ninstruments: [{id: A, kind: other, tuning: x, slot: 1}]',
		],
		[
			'a chord shape that looks like a number',
			'format: rackside/1\nsongs: [{id: a, shapes: {ash: 022100}}]',
		],
		[
			'what is played instead, and which one it is',
			'format: rackside/1\ninstruments: [{id: A, kind: other, tuning: x, gear: 12, recheck-after: 10m, instead: [B, {instrument: C, tuning: x, capo: 1}]}, {id: B, kind: other, tuning: x, instead: []}]',
		],
		[
			'what a pedal has besides',
			'format: rackside/1\nboards: {bo: [{id: drive, scribbles: [1, 2]}]}',
		],
	])('accepts %s', (_, text) => {
		expect(validate(parse(text)), JSON.stringify(validate.errors)).toBe(true);
	});

	it.each([
		'unknown-top-key',
		'unknown-song-key',
		'old-song-key',
		'old-show-keys',
		'old-top-key',
		'instead-key-slip',
		'instead-capo-thirteen',
		'missing-kind',
		'missing-id',
		'map-for-list',
		'list-for-text',
		'unknown-kind',
		'capo-thirteen',
		'ends-word',
		'bridge-word',
		'reference-too-low',
		'times-unknown-work',
		'cue-without-at',
		'no-format',
		'later-format',
	])('marks tests/bad-shows/%s.yaml', (name) => {
		expect(validate(parse(readFileSync(new URL(`${name}.yaml`, BAD), 'utf8')))).toBe(false);
	});
});

type Schema = { readonly [key: string]: unknown };

/** Every key of the schema with what stands of it, as `songs.hands.capo`. */
function keysOf(schema: Schema, path = ''): [path: string, schema: Schema][] {
	const inner = ['items', 'additionalProperties', 'anyOf', 'oneOf', 'allOf'].flatMap((name) => {
		const one = schema[name];
		const all = (Array.isArray(one) ? one : [one]) as unknown[];
		return all.filter((each) => typeof each === 'object' && each !== null);
	});
	const properties = Object.entries((schema.properties ?? {}) as Record<string, Schema>);
	return [
		...properties.flatMap(([key, one]): [string, Schema][] => [
			[`${path}${key}`, one],
			...keysOf(one, `${path}${key}.`),
		]),
		...inner.flatMap((one) => keysOf(one as Schema, path)),
	];
}

describe('every key', () => {
	const keys = keysOf(SCHEMA);

	it('is found, the innermost too', () => {
		const paths = keys.map(([path]) => path);
		for (const path of ['show.start', 'songs.cues.hand.needs.prefer', 'times.banjo-5.wipe']) {
			expect(paths).toContain(path);
		}
	});

	it.each(keys)('%s says what it is for, and an example that it takes', (_, told) => {
		expect(told.description).toMatch(/^[A-Z°].{5,}\.$/s);
		const { examples } = told as { examples: unknown[] };
		expect(examples).toHaveLength(1);
		const takes = ajv.compile(told);
		expect(takes(examples[0]), JSON.stringify(takes.errors)).toBe(true);
	});
});
