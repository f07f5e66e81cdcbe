// What a night says of time in which nothing happened: the machine's sleep, and no work of its own.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { wakefulClock } from '../../src/disk/clock.ts';
import { memoryJournal } from '../../src/journal/memory-journal.ts';
import { openNight } from '../../src/night/night.ts';
import { sampleHeader } from '../journal/sample-journal.ts';
import { loadShow } from '../scenarios/load-show.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));
const START_MS = 1_000_000_000_000;

/** A night on a clock turned by hand, and what its entries say of sleep after each tick. */
function nightThatCanSleep() {
	const time = { awakeMs: 5000, asleepMs: 0 };
	const night = openNight({
		show,
		journal: memoryJournal(sampleHeader()),
		clock: wakefulClock({
			wallMs: () => START_MS + time.awakeMs + time.asleepMs,
			fineMs: () => time.awakeMs,
			uptimeMs: () => time.awakeMs + time.asleepMs,
			bootId: 'boot',
		}),
		plannedZeroMs: START_MS,
		dayOffsetMinutes: 0,
		isRehearsal: false,
	});
	const tick = (awakeMs: number, asleepMs = 0): readonly unknown[] => {
		time.awakeMs += awakeMs;
		time.asleepMs += asleepMs;
		night.tick();
		return night
			.records()
			.flatMap(({ e }) => e)
			.filter(({ k }) => k !== 'night-opened');
	};
	return { night, tick, nowMs: night.nowMs };
}

test('a tick that comes late is no sleep, however late', () => {
	const { tick } = nightThatCanSleep();
	expect(tick(1000)).toEqual([]);
	expect(tick(11_000)).toEqual([]);
	expect(tick(600_000)).toEqual([]);
});

test('sleep is recorded once, as long as it was', () => {
	const { tick, nowMs } = nightThatCanSleep();
	tick(1000);
	const slept = tick(12_000, 60_000);
	expect(slept).toEqual([{ k: 'slept', at: nowMs(), seconds: 60 }]);
	expect(tick(1000)).toEqual(slept);
	// A nap is not worth an entry.
	expect(tick(1000, 9000)).toEqual(slept);
});
