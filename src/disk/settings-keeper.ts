// Preferences that are changed while keys are read. The library that keeps them has the disk confirm what it writes
// on the thread that reads keys and draws: so the disk is tried first, beside everything else, and is given the
// preferences only once it answers at once.

import type { DiskFault } from '../base/disk-fault.ts';
import { growingPause } from './home-pace.ts';
import { randomHex } from './random-hex.ts';
import { openSettings, type Settings, type SettingsPlace } from './settings.ts';
import { syncTrial } from './sync-trial.ts';

/** What changes preferences without ever making anybody wait. */
export type SettingsKeeper = {
	/** Keeps changes; says when they will not outlast the program, or wait for the disk. */
	readonly change: (changes: Partial<Settings>) => Promise<DiskFault | null>;
	/** Why something that was changed is not kept; null where everything is. */
	readonly unkept: () => DiskFault | null;
};

/** The clock by which a disk is judged. */
export type KeeperClock = {
	/** Milliseconds that never go back. */
	readonly nowMs: () => number;
	/** Resolves after so many milliseconds; keeps no program from ending. */
	readonly wait: (milliseconds: number) => Promise<void>;
};

/** Nobody notices that keys wait for so long. */
const AT_ONCE_MS = 250;
/** Whoever changed something is told by then that it waits. */
const TOLD_AFTER_MS = 1000;
const LONGEST_PAUSE_MS = 10_000;

/** Keeps preferences in this place. */
export function settingsKeeper(place: SettingsPlace, { nowMs, wait }: KeeperClock): SettingsKeeper {
	let waiting: Partial<Settings> = {};
	let fault: DiskFault | null = null;
	let work: Promise<void> | null = null;

	async function answersAtOnce(): Promise<boolean> {
		const beganMs = nowMs();
		// Where the disk takes nothing, the writing itself says why.
		await syncTrial({ ...place, nowMs, mark: randomHex(4), appends: 1 });
		return nowMs() - beganMs <= AT_ONCE_MS;
	}

	async function keep(): Promise<void> {
		for (let late = 0; !(await answersAtOnce()); late += 1) {
			await wait(growingPause(late, LONGEST_PAUSE_MS));
		}
		fault = (await openSettings(place)).change(waiting);
		if (fault === null) waiting = {};
	}

	return {
		unkept: () => fault,
		change: (changes) => {
			waiting = { ...waiting, ...changes };
			fault = { code: 'settings-late' };
			work ??= keep().finally(() => {
				work = null;
			});
			return Promise.race([work, wait(TOLD_AFTER_MS)]).then(() => fault);
		},
	};
}
