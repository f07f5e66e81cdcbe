// Parts of a YAML file as a person lays them out: short things on one line, comments above what they are about.

import {
	Document,
	isCollection,
	isMap,
	isNode,
	type Node,
	Pair,
	Scalar,
	YAMLMap,
	YAMLSeq,
} from 'yaml';
import { cleanText } from '../base/clean-text.ts';

/** No line is folded: the quick reader takes what ends on its line. */
export const FORM = { lineWidth: 0, flowCollectionPadding: false, indentSeq: true } as const;

/** Columns that a map or a list may take on its key's line. */
const SHORT = 72;
/** Columns that an entry of a list may take on its line. */
const LONGEST_LINE = 118;
/** Maps on one line hold no more than this many one in another. */
const DEEPEST_ON_A_LINE = 2;

/** What YAML 1.1, which some editors and scripts still go by, takes for a truth value, a number, a time or a merge. */
const OTHERWISE_IN_OLD_YAML = /^(?:y|n|yes|no|on|off|=|<<)$|^[-+.\d][\d_:.,]*$|^[-+]?0[bo]/i;

export const pair = (key: string, value: unknown): Pair<Node, Node> =>
	new Pair(new Scalar(key), asWritten(value));

/** A text on one line, in quotes where any YAML would take it for something else. */
export function written(text: string): Scalar {
	const clean = cleanText(text.trim());
	return OTHERWISE_IN_OLD_YAML.test(clean) ? quoted(clean) : new Scalar(clean);
}

export function quoted(text: string): Scalar {
	const node = new Scalar(text);
	node.type = Scalar.QUOTE_DOUBLE;
	return node;
}

export function textOrNone(text: string | null): Scalar | null {
	return text === null ? null : written(text);
}

export function blockMap(texts: Readonly<Record<string, string | null>>): YAMLMap {
	const node = new YAMLMap();
	for (const [key, text] of Object.entries(texts)) {
		if (text !== null) node.items.push(new Pair(new Scalar(key), written(text)));
	}
	return node;
}

/** An entry of a list: on its line where it is short enough. */
export function entry(
	texts: Readonly<Record<string, string | null>>,
	further: Readonly<Record<string, unknown>>,
	...more: readonly (readonly (readonly [string, Node])[])[]
): YAMLMap {
	const node = blockMap(texts);
	for (const [key, value] of more.flat()) node.items.push(new Pair(new Scalar(key), value));
	for (const [key, value] of Object.entries(further)) {
		node.items.push(new Pair(new Scalar(key), asWritten(value)));
	}
	return fitting(node, LONGEST_LINE);
}

/** What the file writes for a value, each map and list on its key's line where it is short. */
export function asWritten(value: unknown): Node {
	if (isNode(value)) return value;
	const node = new Document(value, { aliasDuplicateObjects: false }).contents ?? new Scalar(null);
	return laidOut(node);
}

export function laidOut<One extends Node>(node: One): One {
	if (!isCollection(node)) return node;
	if (depthOf(node) <= DEEPEST_ON_A_LINE) fitting(node, SHORT);
	if (node.flow) return node;
	for (const item of node.items) {
		const inner = item instanceof Pair ? item.value : item;
		if (isCollection(inner)) laidOut(inner);
	}
	return node;
}

function depthOf(node: unknown): number {
	if (!isCollection(node)) return 0;
	const inner = node.items.map((item) => depthOf(item instanceof Pair ? item.value : item));
	return 1 + Math.max(0, ...inner);
}

/** On one line where that takes no more than so many columns and hides no comment. */
function fitting<One extends Node>(node: One, columns: number): One {
	if (!isCollection(node)) return node;
	onOneLine(node);
	const text = new Document(node).toString(FORM);
	const isShort = text.trimEnd().length <= columns && !text.trimEnd().includes('\n');
	if (!isShort) node.flow = false;
	return node;
}

export function onOneLine<One extends YAMLMap | YAMLSeq>(node: One): One {
	node.flow = true;
	return node;
}

export function shortest(items: readonly Node[]): Node {
	return onOneLine(listOf(items));
}

export function listOf(items: readonly Node[]): YAMLSeq {
	const node = new YAMLSeq();
	node.items.push(...items);
	return node;
}

export function spaced(nodes: readonly Node[]): readonly Node[] {
	for (const node of nodes.slice(1)) if (isMap(node)) node.spaceBefore = true;
	return nodes;
}

/** The node with these sentences above it. */
export function remark<One extends Node>(node: One, sentences: readonly string[] | undefined): One {
	if (sentences?.length) node.commentBefore = commentOf(sentences);
	return node;
}

/** The sentence above the entry to which keys and ids lead, which is then no more on one line with others. */
export function remarkWithin(
	node: Node,
	[first, ...others]: readonly string[],
	sentence: string,
): void {
	if (!isCollection(node) || first === undefined) return;
	const found = isMap(node)
		? node.get(first, true)
		: node.items.find((item) => isMap(item) && item.get('id') === first);
	if (!isNode(found)) return;
	node.flow = false;
	if (others.length > 0) remarkWithin(found, others, sentence);
	else
		found.commentBefore = [found.commentBefore, commentOf([sentence])].filter(Boolean).join('\n');
}

export function commentOf(sentences: readonly string[]): string {
	return sentences.map((one) => ` ${cleanText(one)}`).join('\n');
}
