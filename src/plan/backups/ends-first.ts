// Whether a backup is worth handing while the song is on.

import type { NightMs } from '../../journal/entry.ts';
import { songEndMs } from '../demand/first-song.ts';
import type { Section, StandIn } from '../plan.ts';

/**
 * Seconds that the song on still has where it is over before this backup is in hands; null where it is not, or where
 * nothing is known to be left.
 *
 * @example
 * endsFirst({ readyInSeconds: 20 }, [{ hasBegun: true, item: '1', endMs: 12000 }], 4000) // => 8
 */
export function endsFirst(
	{ readyInSeconds }: Pick<StandIn, 'readyInSeconds'>,
	sections: readonly Section[],
	nowMs: NightMs,
): number | null {
	const endMs = songEndMs(sections);
	const left = endMs === null ? 0 : (endMs - nowMs) / 1000;
	return left > 0 && readyInSeconds > left ? left : null;
}
