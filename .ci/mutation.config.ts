// The tests that are to notice each change that `campaign:mutation` makes to the sources named in mutation.json.

import whole from './vitest.config.ts';

export default {
	...whole,
	test: {
		...whole.test,
		include: [
			'tests/journal/**/*.test.ts',
			'tests/base/clean-text.test.ts',
			'tests/showfile/**/*.test.ts',
		],
		// By chance, and as many as there is time for: too long for each change.
		exclude: ['tests/showfile/mutated-shows.property.test.ts'],
		// With every change in the source at once, nothing takes the time that it should.
		testNamePattern: /^(?!.*(?:in proportion|no longer than))/,
		maxWorkers: 1,
	},
};
