// The examples in the docstrings of src/history are true, and every function has one.

import { describe, expect, test } from 'vitest';
import { docstringExamples } from '../docstring-examples.ts';

const { examples, functionsWithout, evaluate } = await docstringExamples(
	new URL('../../src/history/', import.meta.url),
);

describe('the example in the docstring', () => {
	test.each(examples)('$file: $call', ({ call, value }) => {
		expect(evaluate(call)).toEqual(evaluate(value));
	});
});

test('every exported function has one', () => {
	expect(functionsWithout).toEqual([]);
});
