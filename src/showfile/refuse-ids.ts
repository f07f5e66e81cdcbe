// Ids that no entry may have: given twice in their list, or words that mean something else where the id
// would stand. Asked of the file's tree, so that a faulty entry's id is judged too.

import { isInheritedName } from './inherited-name.ts';
import { ID_LISTS } from './linking.ts';
import { EMPTY_HANDS } from './resolve-song.ts';
import { sectionOf } from './section-of.ts';
import { CUE_KEYS } from './shape.ts';
import type { ShowFault } from './show-fault.ts';
import type { SourceNode } from './source-node.ts';
import { childAt } from './source-node.ts';

const RESERVED: Readonly<Record<string, readonly string[]>> = {
	players: CUE_KEYS,
	instruments: [EMPTY_HANDS],
};

/** A problem for every id that stands a second time in its list, and for every reserved one. */
export function refuseIds(root: SourceNode): ShowFault[] {
	return ID_LISTS.flatMap((list) => {
		const node = sectionOf(root, list);
		return node?.kind === 'list' ? refuseInList(list, node.items) : [];
	});
}

function refuseInList(list: string, items: readonly SourceNode[]): ShowFault[] {
	const problems: ShowFault[] = [];
	const first = new Map<string, SourceNode>();
	for (const item of items) {
		const node = childAt(item, 'id');
		if (node?.kind !== 'text') continue;
		const id = node.text.trim().normalize('NFC');
		const before = first.get(id);
		if (before) {
			problems.push({ code: 'duplicate-id', list, id, first: before.place, where: node.place });
		} else first.set(id, node);
		if (isInheritedName(id) || RESERVED[list]?.includes(id)) {
			problems.push({ code: 'reserved-id', list, id, where: node.place });
		}
	}
	return problems;
}
