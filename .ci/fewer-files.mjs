// Fewer files to load. The bundler makes one for every set of parts that share code, most of them small, and finding
// a file takes as long as reading much code. So files that nearly the same parts load become one: a part that needs
// only some of it loads the rest along. Worked out from the sizes, so that no list is kept by hand.

import { readFile } from 'node:fs/promises';
import { extname, join, relative } from 'node:path';
import { build } from 'esbuild';

/** Finding and linking a file takes Node 24 about as long as loading so many bytes of code: measured. */
const FILE_BYTES = 10_000;
/** And a module of Node's own, which most starts do without. */
const NODE_MODULE_BYTES = 100_000;
/** One number has bits for these. */
const MOST_PARTS = 31;

/** What esbuild makes of these options in fewer files, as it is not to write them itself. */
export async function buildInFewerFiles(options) {
	const root = options.absWorkingDir;
	const { metafile } = await build(options);
	const along = loadedAlong(metafile);
	const loadAlong = (bundler) => {
		bundler.onLoad({ filter: /\.tsx?$/ }, async ({ path }) => {
			const files = along.get(relative(root, path)) ?? [];
			if (files.length === 0) return undefined;
			const imports = files.map((file) => `import ${JSON.stringify(join(root, file))};`);
			const contents = [await readFile(path, 'utf8'), ...imports].join('\n');
			return { contents, loader: extname(path).slice(1) };
		});
	};
	return build({ ...options, plugins: [{ name: 'load-along', setup: loadAlong }] });
}

/** For each source that a part of the program begins with, those of ours that the part is to load along. */
function loadedAlong({ outputs }) {
	const files = Object.keys(outputs);
	const parts = files.filter((file) => outputs[file].entryPoint !== undefined);
	if (parts.length > MOST_PARTS) throw new Error(`more than ${MOST_PARTS} parts to load`);
	const needs = new Map(files.map((file) => [file, withNeeds(file, outputs)]));
	const before = new Map();
	parts.forEach((part, place) => {
		for (const one of needs.get(part)) before.set(one, (before.get(one) ?? 0) | (1 << place));
	});
	const bitOf = (part) => 1 << parts.indexOf(part);
	const askedBy = (part) => [...needs.get(part)].flatMap((file) => askedLater(outputs[file]));
	// What no other part asks for begins the program: an old Node reads it too, so nothing is added to it.
	const asked = new Set(parts.flatMap(askedBy));
	const begin = parts.find((part) => !asked.has(part));
	// It loads the rest of what finds a command, and that the commands; what these ask for later comes on top of
	// what they have loaded, so there it matters little.
	const starts = [begin, ...askedBy(begin), ...askedBy(begin).flatMap(askedBy)];
	const after = merged(before, {
		files,
		needs,
		bytes: (one) => outputs[one]?.bytes ?? NODE_MODULE_BYTES,
		mayLoad: (one, added) => added === 0 || ((added & bitOf(begin)) === 0 && !parts.includes(one)),
		counted: starts.reduce((bits, part) => bits | bitOf(part), 0),
	});
	return new Map(
		parts.map((part, place) => {
			const isAdded = (file) => ((after.get(file) & ~before.get(file)) >> place) & 1;
			const sources = files.filter(isAdded).flatMap((file) => Object.keys(outputs[file].inputs));
			return [outputs[part].entryPoint, sources.filter(isOurs)];
		}),
	);
}

/**
 * Which parts load each file, and each of Node's modules, once two files at a time were made one for as long as that
 * spares anything: a bit for each part.
 */
function merged(before, { files, needs, bytes, mayLoad, counted }) {
	const count = (by) => ones(by & counted);
	const cost = (loaded) => {
		let sum = 0;
		for (const [one, by] of loaded) sum += count(by) * bytes(one);
		for (const by of new Set(files.map((file) => loaded.get(file)))) sum += count(by) * FILE_BYTES;
		return sum;
	};
	/** With all that these two need loaded by whatever loads either; as it was, where that may not be. */
	const together = (loaded, one, other) => {
		const by = loaded.get(one) | loaded.get(other);
		const after = new Map(loaded);
		for (const file of [...needs.get(one), ...needs.get(other)]) {
			if (!mayLoad(file, by & ~loaded.get(file))) return loaded;
			after.set(file, by | loaded.get(file));
		}
		return after;
	};
	/** Whether they weigh less themselves than the file that they spare. */
	const isWorthIt = (loaded, one, other) => {
		const [by, byOther] = [loaded.get(one), loaded.get(other)];
		const more = bytes(one) * count(byOther & ~by) + bytes(other) * count(by & ~byOther);
		return more < count(by & byOther) * FILE_BYTES;
	};
	const pairs = files.flatMap((one, place) => files.slice(0, place).map((other) => [one, other]));
	let loaded = before;
	for (let last = null; last !== loaded; ) {
		last = loaded;
		let least = cost(loaded);
		for (const [one, other] of pairs) {
			if (last.get(one) === last.get(other) || !isWorthIt(last, one, other)) continue;
			const after = together(last, one, other);
			const costs = cost(after);
			if (costs < least) [loaded, least] = [after, costs];
		}
	}
	return loaded;
}

/** What a file asks for only when it is needed. */
function askedLater({ imports } = { imports: [] }) {
	return imports.flatMap(({ path, kind, external }) =>
		kind === 'dynamic-import' && !external ? [path] : [],
	);
}

/** The file with all that is loaded before it, Node's modules among that. */
function withNeeds(file, outputs, found = new Set()) {
	if (found.has(file)) return found;
	found.add(file);
	for (const { path, kind } of outputs[file]?.imports ?? []) {
		if (kind === 'import-statement') withNeeds(path, outputs, found);
	}
	return found;
}

function isOurs(source) {
	return /^(src|machines)\//.test(source);
}

function ones(bits) {
	let sum = 0;
	for (let left = bits; left !== 0; left &= left - 1) sum += 1;
	return sum;
}
