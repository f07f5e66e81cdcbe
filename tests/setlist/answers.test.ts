// What was answered to what a list left open stands in the reading, and is asked no more.

import { describe, expect, it } from 'vitest';
import { answerKey, NO_ANSWERS, readingOf } from '../../src/setlist/answers.ts';
import { EMPTY_RACK } from '../../src/setlist/list-reading.ts';
import { readText } from './read-list.ts';

const read = (text: string) => readText(text, { form: 'table' });

/** Seconds of the interval, and what is left open. */
function afterAnswer(text: string, answer: string) {
	const { list, reading } = read(text);
	const [open] = reading.asked;
	if (!open) throw new Error('nothing is asked');
	const { set, asked } = readingOf(list, EMPTY_RACK, {
		...NO_ANSWERS,
		cells: new Map([[answerKey(open), answer]]),
	});
	const interval = set.find((item) => item.kind === 'interval');
	return { seconds: interval?.kind === 'interval' ? interval.seconds : null, left: asked.length };
}

describe('the length of an interval', () => {
	// Intervals are spoken of in minutes: common practice.
	it.each([
		['20', 1200],
		['45', 2700],
		['20 min', 1200],
		['20:00', 1200],
	])('in a column of lengths reads %s as minutes, unasked', (length, seconds) => {
		const { reading } = read(`Title;Time\nHarbour;4:05\nInterval;${length}\nLantern;3:30\n`);
		expect(reading.set[1]).toEqual({ kind: 'interval', seconds });
		expect(reading.asked).toEqual([]);
	});

	it('is what was answered, and is not open any more', () => {
		const table = 'Title;Time\nHarbour;4:05\nInterval;long\nLantern;3:30\n';
		expect(afterAnswer(table, '25 min')).toEqual({ seconds: 1500, left: 0 });
	});
});
