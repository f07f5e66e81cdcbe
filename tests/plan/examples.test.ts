// Runs the examples in docstrings: every line `call // => value` under an `@example`.

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { exampleNight } from './example-night.ts';

const SOURCE = new URL('../../src/plan/', import.meta.url);

type Example = { readonly file: string; readonly call: string; readonly value: string };

function examplesIn(file: string): readonly Example[] {
	const comments = readFileSync(new URL(file, SOURCE), 'utf8').match(/\/\*\*.*?\*\//gs) ?? [];
	return comments.flatMap((comment) =>
		(comment.split('@example')[1] ?? '').split('\n').flatMap((line) => {
			const [, call, value] = /^\s*\*\s+(\S.*?)\s+\/\/ => (.+)$/.exec(line) ?? [];
			return call === undefined || value === undefined ? [] : [{ file, call, value }];
		}),
	);
}

const files = readdirSync(SOURCE).filter((file) => file.endsWith('.ts'));
const modules = await Promise.all(files.map((file) => import(new URL(file, SOURCE).href)));
const given: Readonly<Record<string, unknown>> = Object.assign({}, ...modules);
const scope = { ...given, ...exampleNight };

function evaluate(expression: string): unknown {
	return new Function(...Object.keys(scope), `return (${expression});`)(...Object.values(scope));
}

const examples = files.flatMap(examplesIn);

describe('the example in the docstring', () => {
	test.each(examples)('$file: $call', ({ call, value }) => {
		expect(evaluate(call)).toEqual(evaluate(value));
	});
});

test('every exported function has one', () => {
	const functions = Object.keys(given).filter((name) => typeof given[name] === 'function');
	const shown = examples.map(({ call }) => call.split('(')[0]);
	expect(functions.filter((name) => !shown.includes(name))).toEqual([]);
});
