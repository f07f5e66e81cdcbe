// Nights larger than anybody takes on tour: what planning one may look at is bounded in steps, so that a
// key and a signal are never kept waiting for it.

import { describe, expect, test } from 'vitest';
import { momentBefore, readyAtZero } from '../../src/plan/timed-choice/before-doors.ts';
import { planCore } from '../../src/plan/timed-choice/plan-core.ts';
import { grownShow } from '../bench/grown-show.ts';
import { showFrom } from './show-from.ts';

const LIVE_BUDGET = 40_000;
/** What finding any choice at all may take beyond it; one such night took four million. */
const MOST_BEYOND = 1_000_000;

describe.each([
	[40, 30, 5, 1],
	[60, 40, 6, 1 / 3],
	[200, 60, 8, 1 / 3],
])('%d songs, %d instruments, %d players, %d of it open', (songs, instruments, players, open) => {
	const text = grownShow({ seed: 0, songs, instruments, players, open });
	const show = showFrom(text.replace('format: rackside/1\n', ''));

	test('is planned in a bounded number of steps, each slot filled or said to be missing', () => {
		const from = { left: LIVE_BUDGET };
		const { plan } = planCore(momentBefore(readyAtZero(show)), { from });
		expect(-from.left).toBeLessThan(MOST_BEYOND);
		expect(plan.slots.every((slot) => slot.instrument !== null || slot.isMissing)).toBe(true);
		const inHands = plan.slots.flatMap(({ section, instrument }) =>
			instrument === null ? [] : [`${section.item} ${section.point} ${instrument}`],
		);
		expect(new Set(inHands).size).toBe(inHands.length);
		// What was not looked at to the end is not called the best.
		expect(plan.isProved).toBe(false);
	});
});
