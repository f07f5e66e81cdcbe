// What is drawn while the terminal does not read: nothing, and then the newest.

import { expect, test } from 'vitest';
import { createPaintGate, hasBacklog, isStalled, unblock } from '../../src/terminal/stall.ts';

function gateOf() {
	const painted: [string, boolean][] = [];
	let waiting: (() => void)[] = [];
	const terminal = { isStalled: false };
	const gate = createPaintGate<string>({
		isStalled: () => terminal.isStalled,
		paint: (state, isFull) => painted.push([state, isFull]),
		schedule: (_, run) => waiting.push(run),
	});
	function look(): void {
		const due = waiting;
		waiting = [];
		for (const run of due) {
			run();
		}
	}
	return { gate, painted, terminal, look, timers: () => waiting.length };
}

test('a terminal that reads gets every state at once', () => {
	const { gate, painted } = gateOf();
	gate.offer('one');
	gate.offer('two');
	expect(painted).toEqual([
		['one', false],
		['two', false],
	]);
});

test('a stalled one gets the newest once it reads again, drawn in full', () => {
	const { gate, painted, terminal, look, timers } = gateOf();
	terminal.isStalled = true;
	for (const state of ['one', 'two', 'three']) {
		gate.offer(state);
	}
	look();
	look();
	expect(painted).toEqual([]);
	expect(gate.isHolding()).toBe(true);
	expect(timers()).toBe(1);
	terminal.isStalled = false;
	look();
	expect(painted).toEqual([['three', true]]);
	expect(gate.isHolding()).toBe(false);
	expect(timers()).toBe(0);
	gate.offer('four');
	expect(painted.at(-1)).toEqual(['four', false]);
});

test('a state that comes between draining and the next look is not overtaken', () => {
	const { gate, painted, terminal, look } = gateOf();
	terminal.isStalled = true;
	gate.offer('one');
	terminal.isStalled = false;
	gate.offer('two');
	look();
	expect(painted).toEqual([['two', true]]);
});

test('64 KB unsent is no stall yet, one byte more is', () => {
	expect(isStalled({ writableLength: 65_536 })).toBe(false);
	expect(isStalled({ writableLength: 65_537 })).toBe(true);
	expect(hasBacklog({ writableLength: 0 })).toBe(false);
	expect(hasBacklog({ writableLength: 1 })).toBe(true);
});

test('streams are told not to block, and one that cannot be told is said', () => {
	const told: boolean[] = [];
	const terminal = { _handle: { setBlocking: (isBlocking: boolean) => told.push(isBlocking) } };
	expect(unblock([terminal, terminal])).toBe(true);
	expect(told).toEqual([false, false]);
	for (const stream of [{}, { _handle: null }, { _handle: {} }]) {
		expect(unblock([terminal, stream])).toBe(false);
	}
});
