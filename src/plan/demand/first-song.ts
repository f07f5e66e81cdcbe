// Which sections belong to the song that is on or comes first. Apart, since a list item alone does not
// say so: after a jump back the song that is on comes a second time.

import type { NightMs } from '../../journal/entry.ts';
import type { Section, StandIn } from '../plan.ts';

/**
 * The sections of the song that is on, from its present one, or else of the one that comes first.
 *
 * @example
 * firstSong(plan.sections).map(({ song }) => song) // => ['harbour']
 */
export function firstSong(sections: readonly Section[]): readonly Section[] {
	const second = sections.findIndex(({ point }, place) => place > 0 && point === 0);
	return second < 0 ? sections : sections.slice(0, second);
}

/**
 * When the song that is on is expected to end; null where none is on.
 *
 * @example
 * songEndMs(plan.sections) // => null
 */
export function songEndMs(sections: readonly Section[]): NightMs | null {
	const last = firstSong(sections).at(-1);
	return last?.hasBegun ? last.endMs : null;
}

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
	const left = ((songEndMs(sections) ?? nowMs) - nowMs) / 1000;
	return left > 0 && readyInSeconds > left ? left : null;
}
