// Ids that no entry may have: given twice in their list, or words that mean something else where the id
// would stand. Asked of the file's tree, so that a faulty entry's id is judged too.

import type { Problem } from '../base/problem.ts';
import { isInheritedName } from './inherited-name.ts';
import { ID_LISTS } from './linking.ts';
import { EMPTY_HANDS } from './resolve-song.ts';
import { sectionOf } from './section-of.ts';
import { CUE_KEYS } from './shape.ts';
import { shownText } from './shown-text.ts';
import type { SourceNode } from './source-node.ts';
import { childAt } from './source-node.ts';

const RESERVED: Readonly<Record<string, readonly string[]>> = {
	players: CUE_KEYS,
	instruments: [EMPTY_HANDS],
};

/** A problem for every id that stands a second time in its list, and for every reserved one. */
export function refuseIds(root: SourceNode): Problem[] {
	return ID_LISTS.flatMap((list) => {
		const node = sectionOf(root, list);
		return node?.kind === 'list' ? refuseInList(list, node.items) : [];
	});
}

function refuseInList(list: string, items: readonly SourceNode[]): Problem[] {
	const problems: Problem[] = [];
	const first = new Map<string, SourceNode>();
	for (const item of items) {
		const node = childAt(item, 'id');
		if (node?.kind !== 'text') continue;
		const id = node.text.trim().normalize('NFC');
		const before = first.get(id);
		if (before) {
			const { file, line } = before.place;
			const where = file === node.place.file ? `line ${line}` : `${file}, line ${line}`;
			problems.push({
				code: 'duplicate-id',
				what: `the id ${shownText(id)} stands in ${list} a second time`,
				where: node.place,
				found: `the first in ${where}`,
				hint: 'Give each an id of its own.',
			});
		} else first.set(id, node);
		if (isInheritedName(id) || RESERVED[list]?.includes(id)) {
			problems.push({
				code: 'reserved-id',
				what: `${shownText(id)} cannot be an id in ${list}`,
				where: node.place,
				hint: 'The word means something else in a show file; choose another.',
			});
		}
	}
	return problems;
}
