// What is drawn while the terminal does not read: nothing, and then the newest.

import { expect, test } from 'vitest';
import { createPaintGate, hasBacklog, oncePerTurn, unblock } from '../../src/terminal/stall.ts';

function gateOf() {
	const painted: string[] = [];
	let waiting: (() => void)[] = [];
	const terminal = { isStalled: false, newest: '' };
	const gate = createPaintGate({
		hasBacklog: () => terminal.isStalled,
		paint: () => painted.push(terminal.newest),
		afterSending: (run) => waiting.push(run),
	});
	function offer(newest: string): void {
		terminal.newest = newest;
		gate.offer();
	}
	function sent(): void {
		const due = waiting;
		waiting = [];
		for (const run of due) {
			run();
		}
	}
	return { gate, painted, terminal, offer, sent, waiting: () => waiting.length };
}

test('a terminal that reads gets every state at once', () => {
	const { painted, offer } = gateOf();
	offer('one');
	offer('two');
	expect(painted).toEqual(['one', 'two']);
});

test('a stalled one gets the newest once it reads again', () => {
	const { gate, painted, terminal, offer, sent, waiting } = gateOf();
	terminal.isStalled = true;
	for (const state of ['one', 'two', 'three']) {
		offer(state);
	}
	expect(painted).toEqual([]);
	expect(gate.isHolding()).toBe(true);
	expect(waiting()).toBe(1);
	terminal.isStalled = false;
	sent();
	expect(painted).toEqual(['three']);
	expect(gate.isHolding()).toBe(false);
	offer('four');
	expect(painted).toEqual(['three', 'four']);
	expect(waiting()).toBe(0);
});

test('what else was written meanwhile must go out first', () => {
	const { painted, terminal, offer, sent } = gateOf();
	terminal.isStalled = true;
	offer('one');
	sent();
	sent();
	expect(painted).toEqual([]);
	terminal.isStalled = false;
	sent();
	expect(painted).toEqual(['one']);
});

test('a state that comes between sending and the news of it is not overtaken', () => {
	const { painted, terminal, offer, sent } = gateOf();
	terminal.isStalled = true;
	offer('one');
	terminal.isStalled = false;
	offer('two');
	sent();
	expect(painted).toEqual(['two']);
});

test('however many states of one turn are offered, the newest alone is drawn', async () => {
	const { gate, painted, terminal } = gateOf();
	const offer = oncePerTurn(gate.offer);
	for (const newest of ['one', 'two', 'three']) {
		terminal.newest = newest;
		offer();
	}
	expect(painted).toEqual([]);
	await Promise.resolve();
	expect(painted).toEqual(['three']);
	offer();
	await Promise.resolve();
	expect(painted).toEqual(['three', 'three']);
});

test('one byte unsent is a backlog', () => {
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
