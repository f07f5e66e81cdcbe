// A night of a large show in memory, its keys pressed as hands do, each timed until the screen is drawn
// again.

import type { Show } from '../../src/showfile/show.ts';
import { styledScreen } from '../../src/ui/styled-screen.ts';
import { pressedNight } from '../night/pressed-night.ts';

export type TimedKey = {
	/** The first key of what it belongs to: `x` for the slot after it too. */
	readonly of: string;
	/** Until the screen is drawn again, by the clock. */
	readonly ms: number;
	/** What of it this program took: a busy machine adds to the clock alone. */
	readonly processorMs: number;
};

export type PressedKeys = {
	readonly taken: readonly TimedKey[];
	/** So many songs were played. */
	readonly songs: number;
	/** Not all of them, for want of time. */
	readonly isCutShort: boolean;
};

const SIZE = { columns: 120, rows: 40 };
const OPTIONS = { isAscii: false, colorDepth: 24 } as const;
/** Between two keys. */
const APART_MS = 400;
const INTO_SONG_MS = 60_000;

/** The keys of every song until the show is over, or until so many seconds have gone into them. */
export function pressedKeys(show: Show, limitSeconds: number): PressedKeys {
	const { night, pass: goBy } = pressedNight(show);
	const taken: TimedKey[] = [];
	const beganMs = performance.now();
	const draw = () => styledScreen(night.screen(), SIZE, OPTIONS);
	const press = (...keys: readonly string[]): void => {
		for (const key of keys) {
			goBy(APART_MS);
			const pressedMs = performance.now();
			const before = process.threadCpuUsage();
			night.press(key);
			draw();
			const { user, system } = process.threadCpuUsage(before);
			const ms = performance.now() - pressedMs;
			taken.push({ of: keys[0]!, ms, processorMs: (user + system) / 1000 });
		}
	};
	const pass = (ms: number): void => {
		goBy(ms);
		night.tick();
		draw();
	};
	const slotHeld = (place: number): string | null => {
		const held = night.session().players[show.players[place % show.players.length]!.id]?.holds;
		return show.instruments.find(({ id }) => id === held)?.slot ?? null;
	};
	const freeSlot = (place: number): string | null => {
		const held = Object.values(night.session().players).map(({ holds }) => holds);
		const free = show.instruments.filter(
			(one) => one.slot !== null && one.for !== null && !held.includes(one.id),
		);
		return free[place % free.length]?.slot ?? null;
	};
	// The screen stands before anybody presses a key.
	draw();
	press('t', '0');
	let songs = 0;
	while (night.session().phase.value !== 'over' && songs < show.songs.length) {
		if (performance.now() - beganMs > limitSeconds * 1000)
			return { taken, songs, isCutShort: true };
		songs += 1;
		press('enter', 'enter');
		press('space');
		pass(INTO_SONG_MS);
		const [held, free] = [slotHeld(songs), freeSlot(songs)];
		// Something else happens in each song, over and over.
		if (songs % 4 === 1 && held !== null) press('b', held, 'enter');
		if (songs % 4 === 2) press('j', ...lettersOf(show.songs.length - songs), 'esc');
		if (songs % 4 === 3 && free !== null) press('x', free, 'u');
		if (songs % 8 === 4) press('j', ...lettersOf(songs + 3), 'enter');
		pass(INTO_SONG_MS);
		press('d');
	}
	return { taken, songs, isCutShort: false };
}

/** What is typed for the song of this number. */
function lettersOf(song: number): readonly string[] {
	return [...'song', 'space', ...String(song)];
}
