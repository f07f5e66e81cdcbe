// A show file and the files that it includes, as one tree. Joined before anything is judged, so that a
// tour's gear and a night's order are one show, and every value still knows its own file and line.

import { cleanText } from '../base/clean-text.ts';
import { LARGEST_SHOW_BYTES, readSource } from './read-source.ts';
import type { ShowFault } from './show-fault.ts';
import type { SourceEntry, SourceMap, SourceNode, SourcePath } from './source-node.ts';
import { childAt } from './source-node.ts';

/** Why a file that is there cannot be read, in the system's own word. */
export type NotRead = { readonly trouble: string };

/** The bytes of a file by the path it is asked for; null when there is none. */
export type LoadFile = (path: string) => Uint8Array | NotRead | null;

/** What a show is read from, and by whom. */
export type ShowFiles = {
	/** Files that are included are asked for beside the main one, by its folder and their name. */
	readonly load: LoadFile;
	readonly mainFile: string;
	readonly readYaml: (file: string, text: string) => Reading;
};

export type JoinedFiles = {
	/** Null when the main file could not be read at all. */
	readonly root: SourceNode | null;
	/** All files could be read, so that an id which nobody knows is a mistake. */
	readonly isWhole: boolean;
	readonly problems: readonly ShowFault[];
	/** As they stand in places: the main file, then what it includes. */
	readonly files: readonly string[];
	readonly byteCount: number;
};

type Reading = { readonly root: SourceNode | null; readonly problems: readonly ShowFault[] };

/** More would be a slip; a tour has gear, songs and perhaps boards. */
const MOST_INCLUDES = 20;

const PLAIN_NAME = /^\w[\w. -]*$/;

// Apart from the plain pattern because this one takes a millisecond to be made.
const isBareName = (name: string): boolean => /^[\p{L}\p{N}_][\p{L}\p{M}\p{N}_. -]*$/u.test(name);

/**
 * Reads the main file and the files of its `include`, which stand in the same folder. Lists and maps of
 * included files come before the main file's own. Problems beside those of reading: a missing file, a
 * name with a folder in it, a file that includes others, more than 1 MB in all, a map's key or a set
 * that stands in two files.
 */
export function joinFiles({ load, mainFile, readYaml }: ShowFiles): JoinedFiles {
	const problems: ShowFault[] = [];
	const files: string[] = [];
	let bytesLeft = LARGEST_SHOW_BYTES;
	const read = (path: string, bytes: Uint8Array): Reading => {
		const file = cleanText(path);
		files.push(file);
		const source = readSource(file, bytes, bytesLeft);
		bytesLeft = Math.max(0, bytesLeft - bytes.length);
		return source.ok ? readYaml(file, source.text) : { root: null, problems: source.problems };
	};

	const mainBytes = load(mainFile);
	if (!(mainBytes instanceof Uint8Array)) {
		return unread([noBytes(mainFile, mainBytes)], mainFile);
	}
	const main = read(mainFile, mainBytes);
	problems.push(...main.problems);
	if (!main.root) return unread(problems, mainFile);
	if (main.root.kind !== 'map') {
		return unread([...problems, notAShow(main.root)], mainFile);
	}

	let isWhole = true;
	const folder = mainFile.slice(
		0,
		Math.max(mainFile.lastIndexOf('/'), mainFile.lastIndexOf('\\')) + 1,
	);
	const parts: SourceNode[] = [];
	for (const name of includedNames(main.root, mainFile.slice(folder.length), problems)) {
		const bytes = load(folder + name.text);
		if (!(bytes instanceof Uint8Array)) {
			problems.push({ ...noBytes(name.text, bytes), where: name.place });
			isWhole = false;
			continue;
		}
		const part = read(folder + name.text, bytes);
		problems.push(...part.problems);
		if (part.root?.kind === 'map') parts.push(withoutMainKeys(part.root, problems));
		else {
			if (part.root?.kind !== 'empty') isWhole = false;
			if (part.root && part.root.kind !== 'empty') problems.push(notAShow(part.root));
		}
	}
	const meeting = { path: [], problems };
	const root = [...parts, main.root].reduce((whole, next) => joined(whole, next, meeting));
	const includeProblem = problems.some((one) => one.code.startsWith('include-'));
	const byteCount = LARGEST_SHOW_BYTES - bytesLeft;
	return { root, isWhole: isWhole && !includeProblem, problems, files, byteCount };
}

function unread(problems: readonly ShowFault[], mainFile: string): JoinedFiles {
	return { root: null, isWhole: false, problems, files: [cleanText(mainFile)], byteCount: 0 };
}

function noBytes(path: string, why: NotRead | null): ShowFault {
	const where = { file: cleanText(path) };
	return why === null
		? { code: 'no-file', path, where }
		: { code: 'file-unreadable', path, trouble: why.trouble, where };
}

function notAShow(node: SourceNode): ShowFault {
	return {
		code: 'no-show',
		isEmpty: node.kind === 'empty',
		where: node.place,
	};
}

type Name = Extract<SourceNode, { kind: 'text' }>;

function includedNames(root: SourceNode, mainName: string, problems: ShowFault[]): Name[] {
	const include = childAt(root, 'include');
	const items = include?.kind === 'list' ? include.items : include ? [include] : [];
	const names: Name[] = [];
	for (const item of items) {
		// What is no text at all is named when the whole is measured against its shape.
		if (item.kind !== 'text') continue;
		const name = item.text.trim();
		const isOwn = name === mainName;
		const isTwice = names.some((one) => one.text === name);
		if (name.length > 255 || !(PLAIN_NAME.test(name) || isBareName(name))) {
			problems.push({ code: 'include-name', name: item.text, where: item.place });
		} else if (isOwn || isTwice) {
			problems.push({
				code: 'include-twice',
				name: item.text,
				isItself: isOwn,
				where: item.place,
			});
		} else names.push({ ...item, text: name });
	}
	for (const late of names.slice(MOST_INCLUDES)) {
		problems.push({ code: 'include-many', most: MOST_INCLUDES, where: late.place });
	}
	return names.slice(0, MOST_INCLUDES);
}

/** An included file holds lists; what makes a show of them stands in the file that is opened. */
function withoutMainKeys(root: SourceMap, problems: ShowFault[]): SourceMap {
	const entries = root.entries.filter(({ key, place }) => {
		if (key === 'include') problems.push({ code: 'nested-include', where: place });
		else if (key === 'show') problems.push({ code: 'misplaced-show', where: place });
		return key !== 'include' && key !== 'show';
	});
	return { ...root, entries };
}

/** Where in the files two values meet, and who hears of it when they cannot be joined. */
type Meeting = { readonly path: SourcePath; readonly problems: ShowFault[] };

/** Lists one after the other, maps key by key. */
function joined(before: SourceNode, after: SourceNode, meeting: Meeting): SourceNode {
	const { path, problems } = meeting;
	if (before.kind === 'empty') return after;
	if (after.kind === 'empty') return before;
	if (before.kind === 'list' && after.kind === 'list' && path.length === 1 && path[0] !== 'set') {
		return { ...after, items: [...before.items, ...after.items] };
	}
	if (before.kind === 'map' && after.kind === 'map') {
		return { ...after, entries: joinedEntries(before.entries, after.entries, meeting) };
	}
	const key = String(path.at(-1));
	if (path.length === 1 && key === 'format') return after;
	problems.push({
		code: 'in-two-files',
		key,
		otherFile: before.place.file,
		where: after.place,
	});
	return before;
}

function joinedEntries(
	before: readonly SourceEntry[],
	after: readonly SourceEntry[],
	{ path, problems }: Meeting,
): SourceEntry[] {
	const later = new Map(after.map((entry) => [entry.key, entry]));
	const known = new Set(before.map((entry) => entry.key));
	const merged = before.map((entry) => {
		const other = later.get(entry.key);
		if (!other) return entry;
		const meeting = { path: [...path, entry.key], problems };
		return { ...other, value: joined(entry.value, other.value, meeting) };
	});
	return [...merged, ...after.filter((entry) => !known.has(entry.key))];
}
