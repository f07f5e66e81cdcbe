// What does not fit the shape of a show file, at its place. The shape library says what failed and along
// which path; what stood there comes from the file's tree.

import type * as z from 'zod/mini';
import { nearestName } from '../base/nearest-name.ts';

import type { BadValue, FoundValue, Owner, ShowFault, ValueShape } from './show-fault.ts';
import type { SourceNode, SourcePath } from './source-node.ts';
import { childAt, keyPlaceAt, nodeAt, placeAt } from './source-node.ts';

type Issue = z.core.$ZodIssue;

/** A problem of shape, and what must be taken out of the tree for the rest to be read without it. */
export type ShapeProblem = { readonly problem: ShowFault; readonly spoilt: SourcePath };

/** What keys were called before, and are called now. */
const RENAMED_KEYS: ReadonlyMap<string, string> = new Map([
	['parts', 'hands'],
	['stale-after', 'recheck-after'],
	['stale-new', 'recheck-new'],
	['sweeten', 'offsets'],
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

/** What a key is of. */
function ownerOf(root: SourceNode, path: SourcePath): Owner {
	const last = path.at(-1);
	if (last === undefined) return 'file';
	if (typeof last !== 'number') return { key: String(last) };
	const list = String(path.at(-2));
	const isOwnList = list === 'cues' || list === 'encore';
	const entryOf = isOwnList || path[0] !== 'boards' ? list : 'boards';
	const id = childAt(nodeAt(root, path), list === 'cues' ? 'at' : 'id');
	return { entryOf, id: id?.kind === 'text' ? id.text : null };
}

function unknownKey(root: SourceNode, path: SourcePath, known: readonly string[]): ShowFault {
	const key = String(path.at(-1));
	const where = keyPlaceAt(root, path);
	const now = RENAMED_KEYS.get(key);
	if (now !== undefined && known.includes(now)) return { code: 'renamed-key', key, now, where };
	const near = nearestName(key, known);
	return { code: 'unknown-key', key, known, near, isInCue: false, where };
}

function missingKey(root: SourceNode, path: SourcePath): ShowFault {
	const key = String(path.at(-1));
	const owner = ownerOf(root, path.slice(0, -1));
	return { code: 'missing-key', key, owner, where: placeAt(root, path.slice(0, -1)) };
}

function emptyValue(root: SourceNode, path: SourcePath): ShowFault {
	return { code: 'empty-value', at: path, where: keyPlaceAt(root, path) };
}

function badValue(root: SourceNode, path: SourcePath, issue: Issue): ShowFault {
	const params = (issue.code === 'custom' ? issue.params : undefined) as Complaint | undefined;
	const complaint: Complaint = params ?? { code: 'bad-value' };
	const found = { at: path, value: foundValue(nodeAt(root, path)), where: placeAt(root, path) };
	return { ...complaint, ...found };
}

/** What a shape says of a value that it does not take. */
type Complaint =
	| BadValue
	| { readonly code: 'wrong-shape'; readonly wanted: readonly ValueShape[] };

const SHAPES: Readonly<Record<string, ValueShape>> = {
	string: 'text',
	array: 'list',
	object: 'keys',
	record: 'keys',
};

function wrongShape(root: SourceNode, path: SourcePath, issue: Issue): ShowFault {
	const wanted = issue.code === 'invalid_type' ? [SHAPES[issue.expected] ?? 'text'] : [];
	const value = foundValue(nodeAt(root, path));
	return { code: 'wrong-shape', at: path, value, wanted, where: placeAt(root, path) };
}

function foundValue(node: SourceNode | undefined): FoundValue {
	if (node === undefined || node.kind === 'empty') return 'nothing';
	if (node.kind === 'text') return { text: node.text };
	return node.kind === 'map' ? 'keys' : 'list';
}

// The branch whose kind of value was written says the most, best of all one that knows its keys; where none was, they
// speak together.
function likeliestBranch(branches: readonly (readonly Issue[])[]): readonly Issue[] {
	const isOfKind = (issues: readonly Issue[]) =>
		!issues.some((issue) => issue.code === 'invalid_type' && issue.path.length === 0);
	const ofKind = branches.filter(isOfKind);
	const isKnown = (issues: readonly Issue[]) =>
		!issues.some((issue) => issue.code === 'unrecognized_keys');
	const branch = ofKind.find(isKnown) ?? ofKind[0];
	if (branch) return branch;
	const all = branches.flat();
	const wanted = all.flatMap((issue) => (issue.code === 'invalid_type' ? [issue.expected] : []));
	const shapes = [...new Set(wanted.map((one): ValueShape => SHAPES[one] ?? 'text'))];
	const params = { code: 'wrong-shape', wanted: shapes } satisfies Complaint;
	return [{ code: 'custom', message: '', path: [], input: undefined, params }];
}
