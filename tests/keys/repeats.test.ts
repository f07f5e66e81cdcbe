// Which presses count: the bounds are our own, from what keyboards do (repeat begins after about half
// a second and then comes about thirty times a second: common practice, no source).

import { describe, expect, test } from 'vitest';
import { judgePress, NO_PRESSES, type Verdict } from '../../src/keys/repeats.ts';

function judge(presses: readonly (readonly [string, number])[]): Verdict[] {
	let known = NO_PRESSES;
	return presses.map(([key, atMs]) => {
		const { presses: after, verdict } = judgePress(known, key, atMs);
		known = after;
		return verdict;
	});
}

const train = (from: number, count: number) =>
	Array.from({ length: count }, (_, i) => ['space', from + 33 * i] as const);

describe('presses', () => {
	test('a key again within 300 ms of its last press counts once, however long it is held', () => {
		expect(judge(train(0, 30)).filter((one) => one === 'count')).toHaveLength(1);
		expect(
			judge([
				['space', 0],
				['space', 299],
			]),
		).toEqual(['count', 'ignore']);
		expect(
			judge([
				['space', 0],
				['space', 300],
			]),
		).toEqual(['count', 'count']);
	});
	test('a press that turns out to begin a repeat is taken back', () => {
		const verdicts = judge([['space', 0], ...train(500, 20)]);
		expect(verdicts.slice(0, 4)).toEqual(['count', 'count', 'ignore', 'take-back']);
		expect(verdicts.slice(4)).toEqual(Array(17).fill('ignore'));
	});
	test('a single bounce takes nothing back, and neither does a slow second press', () => {
		expect(
			judge([
				['space', 0],
				['space', 500],
				['space', 540],
			]),
		).toEqual(['count', 'count', 'ignore']);
		expect(judge([['space', 0], ...train(701, 3)])).toEqual(['count', 'count', 'ignore', 'ignore']);
	});
	test('other keys in between do not hide a bounce', () => {
		expect(
			judge([
				['u', 0],
				['x', 100],
				['u', 200],
			]),
		).toEqual(['count', 'count', 'ignore']);
	});
});
