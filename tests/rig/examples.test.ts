// The examples in the docstrings of src/rig are true, and every function has one.

import { describe, expect, test } from 'vitest';
import { docstringExamples } from '../docstring-examples.ts';
import { exampleRig } from './example-rig.ts';

const { examples, functionsWithout, evaluate } = await docstringExamples(
	new URL('../../src/rig/', import.meta.url),
	exampleRig,
);

describe('the example in the docstring', () => {
	test.each(examples)('$file: $call', ({ call, value }) => {
		expect(evaluate(call)).toEqual(evaluate(value));
	});
});

test('every exported function has one', () => {
	expect(functionsWithout).toEqual([]);
});
