// A night in memory at which somebody presses a key a second.

import { memoryJournal } from '../../src/journal/memory-journal.ts';
import { type Night, openNight } from '../../src/night/night.ts';
import type { NightOptions } from '../../src/night/night-under-way.ts';
import type { Show } from '../../src/showfile/show.ts';
import { sampleHeader } from '../journal/sample-journal.ts';

/** The wall clock when it is opened, and when the first song is meant to start. */
export const START_MS = 1_000_000_000_000;

/** A fresh night of this show, and how to press keys in it. */
export function pressedNight(
	show: Show,
	more: Partial<
		Pick<
			NightOptions,
			'plannedZeroMs' | 'dayOffsetMinutes' | 'measuredOn' | 'says' | 'keepRinging' | 'ringingUndone'
		>
	> = {},
): {
	readonly night: Night;
	readonly press: (...keys: readonly string[]) => void;
	/** So many milliseconds go by without a key. */
	readonly pass: (ms: number) => void;
} {
	let upMs = 0;
	const night = openNight({
		show,
		journal: memoryJournal(sampleHeader()),
		clock: { wallMs: () => START_MS + upMs, upMs: () => upMs, bootId: 'boot' },
		plannedZeroMs: START_MS,
		dayOffsetMinutes: 0,
		isRehearsal: true,
		...more,
	});
	const pass = (ms: number) => {
		upMs += ms;
	};
	const press = (...keys: readonly string[]) => {
		for (const key of keys) {
			pass(1000);
			night.press(key);
		}
	};
	return { night, press, pass };
}
