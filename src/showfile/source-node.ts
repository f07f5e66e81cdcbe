// A show file as a tree of texts, lists and maps, each with its place, before anything is known about
// what the words mean. It stands between the YAML library and the shapes, so that only one file knows
// the library, and so that several files can be joined into one tree without losing their places.

import type { Place } from '../base/problem.ts';

/** A value as written; `empty` is a key or an item with nothing after it. */
export type SourceNode = SourceText | SourceList | SourceMap | SourceEmpty;

/** Words, with quotes and escapes undone. */
export type SourceText = { readonly kind: 'text'; readonly place: Place; readonly text: string };

/** Nothing stands here: it counts as not given. */
export type SourceEmpty = { readonly kind: 'empty'; readonly place: Place };

/** Items in the order of the file. */
export type SourceList = { readonly kind: 'list'; readonly place: Place; items: SourceNode[] };

/** Keys in the order of the file, no key twice. */
export type SourceMap = { readonly kind: 'map'; readonly place: Place; entries: SourceEntry[] };

/** One key with its own place, and what stands under it. */
export type SourceEntry = {
	readonly key: string;
	readonly place: Place;
	readonly value: SourceNode;
};

/** Where something stands: keys and indexes from the root. */
export type SourcePath = readonly PropertyKey[];

/** Plain data without places; what is empty is undefined. */
export function plainValue(node: SourceNode): unknown {
	if (node.kind === 'text') return node.text;
	if (node.kind === 'empty') return undefined;
	if (node.kind === 'list') return node.items.map(plainValue);
	const plain: Record<string, unknown> = {};
	for (const { key, value } of node.entries) plain[key] = plainValue(value);
	return plain;
}

/** What stands under a key of a map; undefined when nothing does or the node is no map. */
export function childAt(node: SourceNode | undefined, key: PropertyKey): SourceNode | undefined {
	if (node?.kind === 'list') return node.items[Number(key)];
	if (node?.kind === 'map') return node.entries.find((entry) => entry.key === key)?.value;
	return undefined;
}

/** What stands at a path; undefined when the path leads nowhere. */
export function nodeAt(root: SourceNode, path: SourcePath): SourceNode | undefined {
	let node: SourceNode | undefined = root;
	for (const key of path) node = childAt(node, key);
	return node;
}

/** The place of a path's value, or of the nearest thing around it that exists. */
export function placeAt(root: SourceNode, path: SourcePath): Place {
	let node = root;
	for (const key of path) {
		const child = childAt(node, key);
		if (!child) break;
		node = child;
	}
	return node.place;
}

/** The place of a key itself rather than of what stands under it. */
export function keyPlaceAt(root: SourceNode, path: SourcePath): Place {
	const parent = nodeAt(root, path.slice(0, -1));
	const key = path.at(-1);
	const entry = parent?.kind === 'map' ? parent.entries.find((one) => one.key === key) : undefined;
	return entry?.place ?? placeAt(root, path);
}

/** Takes what stands at each of these paths out of the tree, in place; paths that lead nowhere do nothing. */
export function prune(root: SourceNode, paths: readonly SourcePath[]): void {
	const doomed = new Set<SourceNode | SourceEntry>();
	const parents = new Set<SourceList | SourceMap>();
	for (const path of paths) {
		const parent = nodeAt(root, path.slice(0, -1));
		const key = path.at(-1);
		if (key === undefined || !parent) continue;
		if (parent.kind === 'list') {
			const item = parent.items[Number(key)];
			if (item) doomed.add(item);
			parents.add(parent);
		} else if (parent.kind === 'map') {
			const entry = parent.entries.find((one) => one.key === key);
			if (entry) doomed.add(entry);
			parents.add(parent);
		}
	}
	for (const parent of parents) {
		if (parent.kind === 'list') parent.items = parent.items.filter((item) => !doomed.has(item));
		else parent.entries = parent.entries.filter((entry) => !doomed.has(entry));
	}
}
