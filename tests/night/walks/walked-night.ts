// A night in memory on a made-up clock that can be killed between any two keys and goes on from its journal.

import { type MemoryJournal, memoryJournal } from '../../../src/journal/memory-journal.ts';
import { type Night, openNight } from '../../../src/night/night.ts';
import type { Show } from '../../../src/showfile/show.ts';
import { sampleHeader } from '../../journal/sample-journal.ts';

/** The wall clock when it is opened; the first song is meant to start a minute later. */
const START_MS = 1_000_000_000_000;
export const PLANNED_ZERO_MS = START_MS + 60_000;
/** Between two keys of one gesture, so that the same key twice counts twice. */
const KEY_MS = 400;

export type WalkedNight = {
	readonly night: () => Night;
	readonly wait: (seconds: number) => void;
	/** One key, a moment after the one before. */
	readonly press: (key: string) => void;
	/** The program ends without a word and is started again at the same moment. */
	readonly kill: () => void;
};

/** A fresh night of this show. */
export function walkedNight(show: Show): WalkedNight {
	let upMs = 0;
	let journal: MemoryJournal = memoryJournal(sampleHeader());
	const open = (): Night =>
		openNight({
			show,
			journal,
			clock: { wallMs: () => START_MS + upMs, upMs: () => upMs, bootId: 'boot' },
			plannedZeroMs: PLANNED_ZERO_MS,
			dayOffsetMinutes: 0,
			isRehearsal: true,
		});
	let night = open();
	return {
		night: () => night,
		wait: (seconds) => {
			upMs += Math.round(seconds * 1000);
			night.tick();
		},
		press: (key) => {
			upMs += KEY_MS;
			night.press(key);
		},
		kill: () => {
			const records = JSON.parse(JSON.stringify(journal.records()));
			journal = memoryJournal(sampleHeader(), { records, checkpoint: null });
			night = open();
		},
	};
}
