// Which sections belong to the song that is on or comes first. Apart, since a list item alone does not
// say so: after a jump back the song that is on comes a second time.

import type { NightMs } from '../../journal/entry.ts';
import type { Section } from '../plan.ts';

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
