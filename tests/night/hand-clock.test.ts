// A rehearsal's clock runs faster than the hand at the keys: a question waits as long as ever, the lock
// opens as ever, and a key that bounces counts once.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { memoryJournal } from '../../src/journal/memory-journal.ts';
import { openNight } from '../../src/night/night.ts';
import { sampleHeader } from '../journal/sample-journal.ts';
import { loadShow } from '../scenarios/load-show.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));
const START_MS = 1_000_000_000_000;
const SPEED = 8;

/** A night eight times as fast, and how to let a hand's time pass in it. */
function fastNight() {
	let handMs = 0;
	const upMs = () => handMs * SPEED;
	const night = openNight({
		show,
		journal: memoryJournal(sampleHeader()),
		clock: { wallMs: () => START_MS + upMs(), upMs, bootId: 'boot' },
		plannedZeroMs: START_MS,
		dayOffsetMinutes: 0,
		isRehearsal: true,
		handMs: () => handMs,
	});
	const wait = (ms: number): void => {
		handMs += ms;
		night.tick();
	};
	return { night, wait };
}

test('a question waits five seconds of the hand, not of the clock', () => {
	const { night, wait } = fastNight();
	night.press('b');
	wait(4900);
	expect(night.screen().prompt).not.toBeNull();
	wait(200);
	expect(night.screen().prompt).toBeNull();
});

test('the lock opens by l and, within two seconds of the hand, esc', () => {
	const { night, wait } = fastNight();
	night.press('l');
	wait(1000);
	night.press('l');
	wait(1900);
	night.press('esc');
	expect(night.screen().isLocked).toBe(false);
});

test('the same key within 300 ms of the hand counts once', () => {
	const { night, wait } = fastNight();
	night.press('space');
	wait(250);
	night.press('space');
	expect(night.state().cue).toMatchObject({ index: 0 });
	wait(400);
	night.press('space');
	expect(night.state().cue).toMatchObject({ index: 1 });
});
