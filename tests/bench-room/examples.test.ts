// The examples in the docstrings of src/bench are true.

import { expect, test } from 'vitest';
import { docstringExamples } from '../docstring-examples.ts';
import { exampleNight } from '../plan/example-night.ts';

const { examples, evaluate } = await docstringExamples(
	new URL('../../src/bench/', import.meta.url),
	exampleNight,
);

test.each(examples)('$file: $call', ({ call, value }) => {
	expect(evaluate(call)).toEqual(evaluate(value));
});
