// Players whose sound reaches the desk by two ways at once: they add where they are in phase and cancel where they are not.
// How late one is against the other hangs on where a microphone stands, which no show file says.

import type { RigPart } from '../showfile/rig.ts';
import type { Show } from '../showfile/show.ts';

export type TwoSources = {
	readonly player: string;
	/** The last part of each way, from the strings to the desk. */
	readonly ends: readonly RigPart[];
};

/**
 * Each player with an amplifier and a direct line, or with two amplifiers.
 *
 * @example
 * twoSources(CORDS) // => []
 * twoSources({ rigs: { bo: [{ id: 'box', name: 'box', kind: 'direct-box' }, { id: 'head', name: 'head', kind: 'amp' }] } })[0].ends.map(({ id }) => id) // => ['box', 'head']
 */
export function twoSources({ rigs = {} }: Pick<Show, 'rigs'>): readonly TwoSources[] {
	return Object.entries(rigs).flatMap(([player, parts]) => {
		const ends = parts.filter(({ kind }) => kind === 'amp' || kind === 'direct-box');
		return ends.length < 2 ? [] : [{ player, ends }];
	});
}
