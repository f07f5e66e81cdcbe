// Which day is offered for the night after another.

import { expect, test } from 'vitest';
import { nextDay } from '../../../src/cli/new/next-day.ts';

test.each([
	['2026-11-29', '2026-11-30'],
	['2026-11-30', '2026-12-01'],
	['2026-12-31', '2027-01-01'],
	// 2028 is a leap year: ISO 8601 takes over the Gregorian calendar.
	['2028-02-28', '2028-02-29'],
	[null, '2026-11-30'],
])('after the night of %s it is on the 30th of November %s', (before, offered) => {
	expect(nextDay(before, '2026-11-30')).toBe(offered);
});
