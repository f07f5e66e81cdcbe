// The machine's own clocks.

import { uptime } from 'node:os';
import type { MachineClock } from '../base/machine-clock.ts';
import { bootId } from './process-identity.ts';

/** What a clock is made from, so that a test can let a machine sleep. */
export type ClockSources = {
	readonly wallMs: () => number;
	/** Fine, but stands still while the machine sleeps. */
	readonly fineMs: () => number;
	/** Coarse, but counts time asleep. */
	readonly uptimeMs: () => number;
	readonly bootId: string;
};

/** How far the two may be apart before it counts as sleep; the coarse one is exact to a hundredth of a second. */
const sleepMs = 250;

/** A clock that is as fine as one and as wakeful as the other. */
export function wakefulClock(sources: ClockSources): MachineClock {
	const firstOffsetMs = sources.uptimeMs() - sources.fineMs();
	let offsetMs = firstOffsetMs;
	const upMs = () => {
		const fineMs = sources.fineMs();
		const behindMs = sources.uptimeMs() - (fineMs + offsetMs);
		if (behindMs > sleepMs) offsetMs += behindMs;
		return fineMs + offsetMs;
	};
	const asleepMs = () => {
		upMs();
		return offsetMs - firstOffsetMs;
	};
	return { wallMs: sources.wallMs, upMs, asleepMs, bootId: sources.bootId };
}

/** The same answer for all that is done in one go: the system reads a file for it. */
function onceATurn(ask: () => number): () => number {
	let answer: number | null = null;
	return () => {
		if (answer !== null) return answer;
		answer = ask();
		queueMicrotask(() => {
			answer = null;
		});
		return answer;
	};
}

/** The clock of this machine. */
export function realClock(): MachineClock {
	return wakefulClock({
		wallMs: () => Date.now(),
		fineMs: () => Number(process.hrtime.bigint() / 1000n) / 1000,
		uptimeMs: onceATurn(() => uptime() * 1000),
		bootId: bootId(),
	});
}
