// How long "ready" lasts: the show's figure for new strings, else the instrument's own, else the show's.

import { expect, it } from 'vitest';
import { instrumentAtLoadIn } from '../../machines/at-load-in.ts';
import { readiness, recheckSeconds } from '../../src/session/readiness.ts';
import { showFrom, smallShow } from '../showfile/show-files.ts';

const show = showFrom(
	smallShow({
		more: `  - {id: own, kind: electric-6, tuning: E standard, recheck-after: 10m}
show: {recheck-after: 8m, recheck-new: 4m}`,
	}),
);

it.each([
	['A1', null, 480],
	['A1', 1, 480],
	['A1', 0.99, 240],
	['A1', 0, 240],
	['own', null, 600],
	['own', 0, 240],
])('%s with %s hours on its strings: %i s', (id, hours, seconds) => {
	const instrument = show.instruments.find((one) => one.id === id)!;
	expect(recheckSeconds(show, instrument, hours)).toBe(seconds);
});

it('is over once it is longer ago than that', () => {
	const instrument = show.instruments.find(({ id }) => id === 'own')!;
	const atLoadIn = instrumentAtLoadIn(instrument);
	const state = { ...atLoadIn, context: { ...atLoadIn.context, readyAtMs: 1000 } };
	expect(readiness(show, { instrument, state }, 601_000)).toEqual({
		isReady: true,
		isStale: false,
		ageSeconds: 600,
	});
	expect(readiness(show, { instrument, state }, 601_001)).toMatchObject({
		isReady: false,
		isStale: true,
	});
});
