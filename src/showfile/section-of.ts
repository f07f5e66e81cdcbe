// The parts of a show file that stand at its top, found even where their key has a slip in it: one
// misspelt `players` must not make every player unknown.

import { nearestName } from '../base/nearest-name.ts';
import { SECTIONS, type Section } from './shape.ts';
import { childAt, type SourceNode } from './source-node.ts';

/** What stands under a top-level key, or under one that was meant to be it; undefined when nothing does. */
export function sectionOf(root: SourceNode, section: Section): SourceNode | undefined {
	const own = childAt(root, section);
	if (own || root.kind !== 'map') return own;
	const isMeant = (key: string) =>
		!(SECTIONS as readonly string[]).includes(key) && nearestName(key, SECTIONS) === section;
	return root.entries.find(({ key }) => isMeant(key))?.value;
}
