// From a show file's bytes to a show, or to everything that is wrong with it, in the order of the file.
// Apart from the reader of YAML that it is given, since there are two.

import { cleanText } from '../base/clean-text.ts';
import { FORMAT } from './format.ts';
import { joinFiles, type ShowFiles } from './join-files.ts';
import { knownIds } from './linking.ts';
import { refuseCueKeys } from './refuse-cue-keys.ts';
import { refuseIds } from './refuse-ids.ts';
import { resolveShow } from './resolve-show.ts';
import { sectionOf } from './section-of.ts';
import { type ShapedShow, showFileShape } from './shape.ts';
import { shapeProblems } from './shape-problem.ts';
import type { Show } from './show.ts';
import type { ShowFault } from './show-fault.ts';
import type { SourceNode, SourcePath } from './source-node.ts';
import { childAt, placeAt, plainValue, prune } from './source-node.ts';

/** A show that can be used, or null and at least one problem. */
export type ShowReading = { readonly show: Show | null; readonly problems: readonly ShowFault[] };

/** With the files as one tree, in which everything knows its place; null where the show cannot be used. */
export type FilesReading = ShowReading & { readonly root: SourceNode | null };

/** More in one run helps nobody, and a file that is no show at all has one for every word. */
const MOST_PROBLEMS = 100;

/** Times that what does not fit is taken out before the rest is left unread. */
const MOST_PRUNINGS = 8;

/** As JSON, a night's journal carries the whole show in its first record; larger ones do not fit. */
const LARGEST_RESOLVED = 1_500_000;

/**
 * The show in these files, deep-frozen, or its problems.
 */
export function showFromFiles(source: ShowFiles): FilesReading {
	const { root, isWhole, problems, files, byteCount } = joinFiles(source);
	if (!root) return refused(problems, files);
	const formatProblem = wrongFormat(root);
	if (formatProblem?.code === 'unknown-format') return refused([...problems, formatProblem], files);

	const known = knownIds(root);
	const found = [...problems, ...(formatProblem ? [formatProblem] : []), ...refuseIds(root)];
	const hasNoSet = isEmptySet(root) && isWhole;
	if (isWhole) found.push(...refuseCueKeys(root, known.players));
	const { shaped, problems: misshapen, cut } = shapeOf(root);
	found.push(...misshapen);
	if (hasNoSet) found.push(emptySet(root));
	if (!shaped) return refused(found, files);

	const fallbackTitle = titleFrom(source.mainFile);
	const { show, problems: unlinked } = resolveShow({ shaped, root, known, isWhole, fallbackTitle });
	found.push(...unlinked.filter((one) => !followsFrom(cut, one)));
	if (found.length === 0 && byteCount > LARGEST_RESOLVED / 20) found.push(...tooLarge(show, files));
	return found.length > 0 ? refused(found, files) : { show: deepFreeze(show), problems: [], root };
}

/** Where entries stand of which something that did not fit was taken out, and whether the set is one of them. */
type Cut = { readonly places: Set<string>; isOfSet: boolean };

const OF_LACKING: ReadonlySet<ShowFault['code']> = new Set([
	'set-item-unclear',
	'part-unclear',
	'midi-unclear',
]);

/** Whether an entry is only said to lack what was taken out of it, which has been said. */
function followsFrom(cut: Cut, { code, where }: ShowFault): boolean {
	if (code === 'interval-place') return cut.isOfSet;
	return OF_LACKING.has(code) && cut.places.has(JSON.stringify(where));
}

/** The problems in the order of files, lines and columns, cut off where nobody would read on. */
function refused(problems: readonly ShowFault[], files: readonly string[]): FilesReading {
	const rank = ({ where }: ShowFault): readonly number[] => [
		where ? files.indexOf(where.file) : -1,
		where?.line ?? 0,
		where?.column ?? 0,
	];
	const sorted = problems
		.map((problem) => ({ problem, rank: rank(problem) }))
		.sort((a, b) => a.rank.map((n, i) => n - (b.rank[i] ?? 0)).find((n) => n !== 0) ?? 0)
		.map(({ problem }) => problem);
	const kept = sorted.slice(0, MOST_PROBLEMS);
	const more = sorted.length - kept.length;
	if (more === 0) return { show: null, problems: kept, root: null };
	const rest: ShowFault = {
		code: 'more-problems',
		more,
		...(files[0] === undefined ? {} : { where: { file: files[0] } }),
	};
	return { show: null, problems: [...kept, rest], root: null };
}

function wrongFormat(root: SourceNode): ShowFault | null {
	const node = childAt(root, 'format');
	if (node?.kind === 'text' && node.text.trim() === FORMAT) return null;
	if (!node || node.kind === 'empty') {
		return { code: 'missing-format', where: node?.place ?? root.place };
	}
	return {
		code: 'unknown-format',
		found: node.kind === 'text' ? node.text : null,
		where: node.place,
	};
}

function isEmptySet(root: SourceNode): boolean {
	const set = sectionOf(root, 'set');
	return !set || set.kind === 'empty' || (set.kind === 'list' && set.items.length === 0);
}

function emptySet(root: SourceNode): ShowFault {
	return { code: 'empty-set', where: childAt(root, 'set')?.place ?? root.place };
}

// Measured once for the problems; then what did not fit is taken out until the rest fits, so that its
// ids can be followed too. What that leaves incomplete has been said already.
function shapeOf(root: SourceNode): {
	shaped: ShapedShow | null;
	problems: ShowFault[];
	cut: Cut;
} {
	const problems: ShowFault[] = [];
	const cut: Cut = { places: new Set(), isOfSet: false };
	for (let round = 0; round < MOST_PRUNINGS; round += 1) {
		const result = showFileShape.safeParse(plainValue(root) ?? {});
		if (result.success) return { shaped: result.data, problems, cut };
		const issues = result.error.issues.slice(0, 10 * MOST_PROBLEMS);
		const misshapen = issues.flatMap((issue) => shapeProblems(root, issue));
		if (round === 0) problems.push(...misshapen.map(({ problem }) => problem));
		const spoilt = misshapen.map((one): SourcePath => one.spoilt);
		for (const path of spoilt) {
			cut.places.add(JSON.stringify(placeAt(root, path.slice(0, -1))));
			cut.isOfSet ||= path[0] === 'set';
		}
		prune(root, spoilt);
	}
	return { shaped: null, problems, cut };
}

function tooLarge(show: Show, files: readonly string[]): ShowFault[] {
	const size = JSON.stringify(show).length;
	if (size <= LARGEST_RESOLVED) return [];
	return [
		{
			code: 'too-large',
			bytes: null,
			...(files[0] === undefined ? {} : { where: { file: files[0] } }),
		},
	];
}

function titleFrom(mainFile: string): string {
	const name = mainFile.split(/[/\\]/).at(-1) ?? '';
	return cleanText(name.replace(/\.ya?ml$/i, '')) || 'Show';
}

function deepFreeze<Value>(value: Value): Value {
	if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
		Object.freeze(value);
		for (const inner of Object.values(value)) deepFreeze(inner);
	}
	return value;
}
