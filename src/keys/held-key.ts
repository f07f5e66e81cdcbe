// What a key that is held down would do on the live screen, by the rule that the screen goes by.

import { judgePress, NO_PRESSES } from './repeats.ts';

export type HeldKey = {
	/** Milliseconds from the press to the first repeat; null where there was none. */
	readonly delayMs: number | null;
	/** Milliseconds between repeats, the median; null where there were fewer than two. */
	readonly intervalMs: number | null;
	/** How often it counts in all; 1 is as it should be. */
	readonly counts: number;
};

/** What the presses of one key, held down from the first on, come to; `pressesMs` in their order. */
export function heldKey(pressesMs: readonly number[]): HeldKey {
	const gaps = pressesMs.slice(1).map((atMs, index) => atMs - (pressesMs[index] ?? atMs));
	const [delayMs = null, ...repeats] = gaps;
	const sorted = repeats.toSorted((one, other) => one - other);
	let presses = NO_PRESSES;
	let counts = 0;
	for (const atMs of pressesMs) {
		const judged = judgePress(presses, 'held', atMs);
		presses = judged.presses;
		if (judged.verdict === 'count') counts += 1;
		else if (judged.verdict === 'take-back') counts -= 1;
	}
	return { delayMs, intervalMs: sorted[Math.floor(sorted.length / 2)] ?? null, counts };
}
