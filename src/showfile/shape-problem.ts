// What does not fit the shape of a show file, said in words and at its place. The shape library says
// what failed and along which path; what stood there and how it is called comes from the file's tree.

import type * as z from 'zod/mini';
import { nearestName } from '../base/nearest-name.ts';
import type { Problem } from '../base/problem.ts';
import type { Complaint } from './scalar-shape.ts';
import { shownText } from './shown-text.ts';
import type { SourceNode, SourcePath } from './source-node.ts';
import { childAt, keyPlaceAt, nodeAt, placeAt } from './source-node.ts';

type Issue = z.core.$ZodIssue;

/** A problem of shape, and what must be taken out of the tree for the rest to be read without it. */
export type ShapeProblem = { readonly problem: Problem; readonly spoilt: SourcePath };

/** What one item of a list is called. */
const ITEM_NAMES: Readonly<Record<string, string>> = {
	techs: 'tech',
	players: 'player',
	instruments: 'instrument',
	songs: 'song',
	packs: 'pack',
	stock: 'stock item',
	sweeten: 'offset',
	cues: 'cue',
	set: 'item of the set',
	encore: 'item of the encore',
	instead: 'entry of instead',
};

/** What keys were called before, and are called now. */
const RENAMED_KEYS: ReadonlyMap<string, string> = new Map([
	['parts', 'hands'],
	['stale-after', 'recheck-after'],
	['stale-new', 'recheck-new'],
]);

/** Every problem that one issue of the shape library is, in the order of its keys. */
export function shapeProblems(
	root: SourceNode,
	issue: Issue,
	path: SourcePath = [],
): ShapeProblem[] {
	const here = [...path, ...issue.path];
	if (issue.code === 'invalid_union') {
		return likeliestBranch(issue.errors).flatMap((inner) => shapeProblems(root, inner, here));
	}
	if (issue.code === 'unrecognized_keys') {
		const known = issue.message.split(' ');
		return issue.keys.map((key) => ({
			problem: unknownKey(root, [...here, key], known),
			spoilt: [...here, key],
		}));
	}
	const node = nodeAt(root, here);
	if (node?.kind === 'empty') return [{ problem: emptyValue(root, here), spoilt: here }];
	if (node === undefined && typeof here.at(-1) === 'string') {
		return [{ problem: missingKey(root, here), spoilt: here.slice(0, -1) }];
	}
	const problem =
		issue.code === 'custom' ? badValue(root, here, issue) : wrongShape(root, here, issue);
	return [{ problem, spoilt: here }];
}

/** How a path's end is called in a sentence: its key, or which item of what. */
export function labelOf(path: SourcePath): string {
	const last = path.at(-1);
	if (typeof last !== 'number') return shownText(String(last));
	return `item ${last + 1} of ${shownText(String(path.at(-2) ?? 'the list'))}`;
}

/** How the thing around a key is called: `the instrument A4`, `the show`. */
function ownerOf(root: SourceNode, path: SourcePath): string {
	const last = path.at(-1);
	if (last === undefined) return 'the show file';
	if (typeof last !== 'number') return shownText(String(last));
	const list = String(path.at(-2));
	const owner =
		list === 'cues' || list === 'encore' ? list : path[0] === 'boards' ? 'boards' : list;
	const name = owner === 'boards' ? 'pedal' : (ITEM_NAMES[owner] ?? 'item');
	const idNode = childAt(nodeAt(root, path), list === 'cues' ? 'at' : 'id');
	if (idNode?.kind === 'text') return `the ${name} ${shownText(idNode.text)}`;
	return `this ${name}`;
}

function unknownKey(root: SourceNode, path: SourcePath, known: readonly string[]): Problem {
	const key = String(path.at(-1));
	const renamed = RENAMED_KEYS.get(key);
	if (renamed !== undefined && known.includes(renamed)) {
		return {
			code: 'renamed-key',
			what: `${key} is now ${renamed}`,
			where: keyPlaceAt(root, path),
			hint: 'Rename it.',
		};
	}
	const near = nearestName(key, known);
	return {
		code: 'unknown-key',
		what: `${shownText(key)} is not a key that is known here`,
		where: keyPlaceAt(root, path),
		expected: `one of ${known.join(', ')}`,
		hint: near === null ? 'Take it out, or put the words into notes.' : `Did you mean ${near}?`,
	};
}

function missingKey(root: SourceNode, path: SourcePath): Problem {
	const key = String(path.at(-1));
	const owner = ownerOf(root, path.slice(0, -1));
	return {
		code: 'missing-key',
		what: `${owner} has no ${key}`,
		where: placeAt(root, path.slice(0, -1)),
		hint: `Add ${key}: and what it is.`,
	};
}

function emptyValue(root: SourceNode, path: SourcePath): Problem {
	return {
		code: 'empty-value',
		what: `${labelOf(path)} has no value`,
		where: keyPlaceAt(root, path),
		hint: 'Give it one, or take it out.',
	};
}

function badValue(root: SourceNode, path: SourcePath, issue: Issue): Problem {
	const params = (issue.code === 'custom' ? issue.params : undefined) as Complaint | undefined;
	const complaint: Complaint = params ?? { code: 'bad-value', what: 'does not fit here' };
	const node = nodeAt(root, path);
	return {
		code: complaint.code,
		what: `${labelOf(path)} ${complaint.what}`,
		where: placeAt(root, path),
		found: node ? foundWords(node) : 'nothing',
		...(complaint.expected === undefined ? {} : { expected: complaint.expected }),
		...(complaint.hint === undefined ? {} : { hint: complaint.hint }),
	};
}

const SHAPE_WORDS: Readonly<Record<string, string>> = {
	string: 'text',
	array: 'a list',
	object: 'keys with values',
	record: 'keys with values',
};

function wrongShape(root: SourceNode, path: SourcePath, issue: Issue): Problem {
	const node = nodeAt(root, path);
	const wanted = issue.code === 'invalid_type' ? (SHAPE_WORDS[issue.expected] ?? 'text') : null;
	return {
		code: 'wrong-shape',
		what: `${labelOf(path)} is not what belongs here`,
		where: placeAt(root, path),
		found: node ? foundWords(node) : 'nothing',
		...(wanted === null ? {} : { expected: wanted }),
	};
}

function foundWords(node: SourceNode): string {
	if (node.kind === 'text') return shownText(node.text);
	return { list: 'a list', map: 'keys with values', empty: 'nothing' }[node.kind];
}

// The branch whose kind of value was written says the most; where none was, the first speaks.
function likeliestBranch(branches: readonly (readonly Issue[])[]): readonly Issue[] {
	const isOfKind = (issues: readonly Issue[]) =>
		!issues.some((issue) => issue.code === 'invalid_type' && issue.path.length === 0);
	const branch = branches.find(isOfKind);
	if (branch) return branch;
	const all = branches.flat();
	const wanted = all.flatMap((issue) => (issue.code === 'invalid_type' ? [issue.expected] : []));
	const expected = [...new Set(wanted.map((one) => SHAPE_WORDS[one] ?? 'text'))].join(' or ');
	return [
		{
			code: 'custom',
			message: '',
			path: [],
			input: undefined,
			params: {
				code: 'wrong-shape',
				what: 'is not what belongs here',
				expected,
			} satisfies Complaint,
		},
	];
}
