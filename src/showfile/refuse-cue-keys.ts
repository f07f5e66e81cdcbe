// The keys of cues. Beside the few that are known, a cue's keys are players, so that a shape alone cannot
// tell a slip from a name.

import { nearestName } from '../base/nearest-name.ts';
import type { Problem } from '../base/problem.ts';
import { CUE_KEYS } from './shape.ts';
import { shownText } from './shown-text.ts';
import { childAt, type SourceNode } from './source-node.ts';

/** Takes keys that are no player's out of every cue of the tree, in place, with a problem for each. */
export function refuseCueKeys(root: SourceNode, players: ReadonlySet<string>): Problem[] {
	const known = [...CUE_KEYS, ...players];
	const problems: Problem[] = [];
	for (const song of itemsOf(childAt(root, 'songs'))) {
		for (const cue of itemsOf(childAt(song, 'cues'))) {
			if (cue.kind !== 'map') continue;
			cue.entries = cue.entries.filter(({ key, place }) => {
				if (known.includes(key)) return true;
				const near = nearestName(key, known);
				problems.push({
					code: 'unknown-key',
					what: `${shownText(key)} is neither a player nor a key that is known here`,
					where: place,
					expected: `one of ${known.map(shownText).join(', ')}`,
					hint:
						near === null ? 'Take it out, or add the player.' : `Did you mean ${shownText(near)}?`,
				});
				return false;
			});
		}
	}
	return problems;
}

function itemsOf(node: SourceNode | undefined): readonly SourceNode[] {
	return node?.kind === 'list' ? node.items : [];
}
