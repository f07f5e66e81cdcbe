// The keys of cues. Beside the few that are known, a cue's keys are players, so that a shape alone cannot
// tell a slip from a name.

import { nearestName } from '../base/nearest-name.ts';

import { CUE_KEYS } from './shape.ts';
import type { ShowFault } from './show-fault.ts';
import { childAt, type SourceNode } from './source-node.ts';

/** Takes keys that are no player's out of every cue of the tree, in place, with a problem for each. */
export function refuseCueKeys(root: SourceNode, players: ReadonlySet<string>): ShowFault[] {
	const known = [...CUE_KEYS, ...players];
	const problems: ShowFault[] = [];
	for (const song of itemsOf(childAt(root, 'songs'))) {
		for (const cue of itemsOf(childAt(song, 'cues'))) {
			if (cue.kind !== 'map') continue;
			cue.entries = cue.entries.filter(({ key, place }) => {
				if (known.includes(key)) return true;
				const near = nearestName(key, known);
				problems.push({ code: 'unknown-key', key, known, near, isInCue: true, where: place });
				return false;
			});
		}
	}
	return problems;
}

function itemsOf(node: SourceNode | undefined): readonly SourceNode[] {
	return node?.kind === 'list' ? node.items : [];
}
