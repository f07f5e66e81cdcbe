// The tests that are to notice each change that `campaign:mutation` makes to the sources named in mutation.json, or,
// of other sources, those that MUTATION_TESTS names, patterns with commas between them.

import whole from './vitest.config.ts';

const quick = 'tests/journal/**/*.test.ts,tests/base/clean-text.test.ts';

export default {
	...whole,
	test: {
		...whole.test,
		include: (process.env.MUTATION_TESTS ?? quick).split(','),
		// With every change in the source at once, nothing takes the time that it should.
		testNamePattern: /^(?!.*(?:in proportion|no longer than))/,
		maxWorkers: 1,
	},
};
