import fc from 'fast-check';
import { expect, test } from 'vitest';

import {
	dayTimeText,
	markText,
	parseDayTime,
	parseMark,
	tenths,
} from '../../src/base/show-clock.ts';

const RUNS = { numRuns: Number(process.env.PROPERTY_RUNS ?? 200) };

test.each([
	[0, '00:00:00'],
	[255_000, '00:04:15'],
	[255_999, '00:04:15'],
	[-300_000, '-00:05:00'],
	[-999, '00:00:00'],
	[-1999, '-00:00:01'],
	[36_000_000, '10:00:00'],
	[400_000_000, '111:06:40'],
])('the mark at %d ms is %s', (ms, text) => {
	expect(markText(ms)).toBe(text);
});

test.each([
	['00:00', 0],
	['-01:00', -60_000],
	['04:15', 255_000],
	['4:15', 255_000],
	['1:02:03', 3_723_000],
	['75:00', 4_500_000],
	['04:15.250', 255_250],
	['04:15.5', 255_500],
	['-00:00.040', -40],
	['-00:00', 0],
])('%s stands for %d ms', (text, ms) => {
	expect(parseMark(text)).toBe(ms);
});

test.each([
	'',
	'15',
	'4:5',
	'04:60',
	'1:60:00',
	'1:2:03',
	'04:15.',
	'04:15.1234',
	'--1:00',
	'+1:00',
	'a',
])('%j is no mark', (text) => {
	expect(parseMark(text)).toBeNull();
});

test('a mark that is written is read back', () => {
	fc.assert(
		fc.property(fc.integer({ min: -360_000, max: 360_000 }), (seconds) => {
			expect(parseMark(markText(seconds * 1000))).toBe(seconds * 1000);
		}),
		RUNS,
	);
});

test('the time of day is that of the place', () => {
	const evening = Date.UTC(2026, 5, 12, 20, 30, 5, 900);
	expect(dayTimeText(evening, 0)).toBe('20:30:05');
	expect(dayTimeText(evening, 120)).toBe('22:30:05');
	expect(dayTimeText(evening, 330)).toBe('02:00:05');
	expect(dayTimeText(evening, -1260)).toBe('23:30:05');
	expect(dayTimeText(-1000, 0)).toBe('23:59:59');
});

test('the time of day agrees with the calendar', () => {
	fc.assert(
		fc.property(fc.date({ noInvalidDate: true }), (date) => {
			expect(dayTimeText(date.getTime(), 0)).toBe(date.toISOString().slice(-13, -5));
		}),
		RUNS,
	);
});

test('a time of day is read as minutes', () => {
	expect(['20:30', '0:00', '00:05', '23:59'].map(parseDayTime)).toEqual([1230, 0, 5, 1439]);
	for (const text of ['24:00', '20:60', '20:3', '2030', '20:30:00', '8pm', '-1:00', '']) {
		expect(parseDayTime(text), text).toBeNull();
	}
});

test('seconds stand to the tenth', () => {
	expect([12.34, 12.36, 15, 0.04].map(tenths)).toEqual([12.3, 12.4, 15, 0]);
	expect(Object.is(tenths(-0.04), 0)).toBe(true);
});
