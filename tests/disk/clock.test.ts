// Uptime that is fine, never runs backwards, and counts the time that the machine slept.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { realClock, wakefulClock } from '../../src/disk/clock.ts';

function turnedByHand() {
	const time = { wallMs: 5_000_000, fineMs: 1000, uptimeMs: 90_000 };
	const clock = wakefulClock({
		wallMs: () => time.wallMs,
		fineMs: () => time.fineMs,
		// As coarse as the system's own.
		uptimeMs: () => Math.floor(time.uptimeMs / 10) * 10,
		bootId: 'boot-1',
	});
	return { time, clock };
}

test('it is as fine as the fine clock', () => {
	const { time, clock } = turnedByHand();
	const start = clock.upMs();
	time.fineMs += 0.25;
	time.uptimeMs += 0.25;
	expect(clock.upMs() - start).toBe(0.25);
	expect(start).toBe(90_000);
});

test('two hours of sleep are two hours', () => {
	const { time, clock } = turnedByHand();
	const start = clock.upMs();
	time.uptimeMs += 7_200_000;
	expect(clock.upMs() - start).toBe(7_200_000);
	time.fineMs += 5;
	time.uptimeMs += 5;
	expect(clock.upMs() - start).toBe(7_200_005);
});

test('sleep is what the fine clock missed, and nothing else', () => {
	const { time, clock } = turnedByHand();
	time.fineMs += 20_000;
	time.uptimeMs += 20_000;
	const start = clock.asleepMs?.();
	time.fineMs += 20_000;
	time.uptimeMs += 7_220_000;
	expect(start).toBe(0);
	expect(clock.asleepMs?.()).toBe(7_200_000);
});

test('setting the wall clock changes nothing but the wall clock', () => {
	const { time, clock } = turnedByHand();
	const start = clock.upMs();
	time.wallMs -= 7_200_000;
	expect(clock.upMs()).toBe(start);
	expect(clock.wallMs()).toBe(5_000_000 - 7_200_000);
});

test('it never runs backwards, and stays within a moment of the uptime', () => {
	fc.assert(
		fc.property(fc.array(fc.tuple(fc.nat(100), fc.nat(1000), fc.boolean())), (moves) => {
			const { time, clock } = turnedByHand();
			let last = clock.upMs();
			for (const [awakeMs, asleepMs, isSleeping] of moves) {
				time.fineMs += awakeMs;
				time.uptimeMs += awakeMs + (isSleeping ? asleepMs : 0);
				expect(clock.upMs()).toBeGreaterThanOrEqual(last);
				last = clock.upMs();
				expect(Math.abs(last - time.uptimeMs)).toBeLessThanOrEqual(260);
			}
		}),
	);
});

test('the machine has one', () => {
	const clock = realClock();
	const first = clock.upMs();
	expect(clock.upMs()).toBeGreaterThanOrEqual(first);
	expect(first).toBeGreaterThan(0);
	expect(Math.abs(clock.wallMs() - Date.now())).toBeLessThan(1000);
	if (process.platform === 'linux') expect(clock.bootId).toMatch(/^[0-9a-f-]{36}$/);
});
