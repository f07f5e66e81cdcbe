// The clock with the busy windows cut out, against counting free milliseconds one by one.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { freeClock } from '../../../src/plan/schedule/free-clock.ts';

const windows = fc
	.array(fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 })), { maxLength: 5 })
	.map((gaps) => {
		let ms = 0;
		return gaps.map(([gap, length]) => {
			const fromMs = ms + gap;
			ms = fromMs + length;
			return { fromMs, untilMs: ms };
		});
	});

test('shows how many free milliseconds have gone by', () => {
	fc.assert(
		fc.property(windows, fc.integer({ min: 0, max: 100 }), (busy, ms) => {
			const isFree = (at: number): boolean =>
				!busy.some(({ fromMs, untilMs }) => fromMs <= at && at < untilMs);
			const counted = Array.from({ length: ms }, (_, at) => at).filter(isFree).length;
			expect(freeClock(busy).at(ms)).toBe(counted);
		}),
	);
});

test('first and last are the ends of the stretch in which it shows a value', () => {
	fc.assert(
		fc.property(windows, fc.integer({ min: 0, max: 60 }), (busy, free) => {
			const clock = freeClock(busy);
			const showing = Array.from({ length: 200 }, (_, ms) => ms).filter(
				(ms) => clock.at(ms) === free,
			);
			expect(clock.firstMs(free)).toBe(showing[0]);
			expect(clock.lastMs(free)).toBe(showing.at(-1));
		}),
	);
});
