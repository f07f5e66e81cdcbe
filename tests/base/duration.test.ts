import fc from 'fast-check';
import { expect, test } from 'vitest';

import { minutesSeconds, parseSeconds } from '../../src/base/duration.ts';

const RUNS = { numRuns: Number(process.env.PROPERTY_RUNS ?? 200) };

test.each([
	['3:30', 210],
	['1:02:03', 3723],
	['90:00', 5400],
	['15m', 900],
	['45s', 45],
	['4m30s', 270],
	['4m 30s', 270],
	['1h10m', 4200],
	['1H', 3600],
	['20 min', 1200],
	['1.5h', 5400],
	['210', 210],
	['0', 0],
	[' 12.5 ', 12.5],
	['24h', 86_400],
])('%j is %d seconds', (text, seconds) => {
	expect(parseSeconds(text)).toBe(seconds);
});

test.each([
	'',
	' ',
	'3:60',
	'3:5',
	'1:60:00',
	':30',
	'-5',
	'-0:30',
	'+5',
	'1e3',
	'Infinity',
	'NaN',
	'0x10',
	'24h1s',
	'86401',
	'9'.repeat(400),
	'30m4h',
	'4m30',
	'5 x',
	'm',
	'h m s',
	'١٥m',
])('%j is no length of time', (text) => {
	expect(parseSeconds(text)).toBeNull();
});

test('a long run of digits is refused at once', () => {
	const began = performance.now();
	expect(parseSeconds(`${'1'.repeat(100_000)}x`)).toBeNull();
	expect(parseSeconds(`1${' '.repeat(100_000)}x`)).toBeNull();
	expect(performance.now() - began).toBeLessThan(500);
});

test.each([
	[0, '0:00'],
	[45, '0:45'],
	[-30, '-0:30'],
	[962, '16:02'],
	[3725, '1:02:05'],
	[-3725, '-1:02:05'],
	[44.9, '0:44'],
	[-0.4, '0:00'],
	[-1.9, '-0:01'],
	[44.99999999999, '0:45'],
	[3599.99, '59:59'],
	[Number.POSITIVE_INFINITY, '-:--'],
	[Number.NaN, '-:--'],
])('%d seconds are written %s', (seconds, text) => {
	expect(minutesSeconds(seconds)).toBe(text);
});

test('what is written is read back', () => {
	fc.assert(
		fc.property(fc.integer({ min: 0, max: 86_400 }), (seconds) => {
			expect(parseSeconds(minutesSeconds(seconds))).toBe(seconds);
		}),
		RUNS,
	);
});
