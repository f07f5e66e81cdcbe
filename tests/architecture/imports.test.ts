// The lint configuration is the check that imports go downward only and that time and chance stay at the
// edge. Each rule is shown a planted violation here, since a check that cannot fail holds nothing.

import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import {
	FOLDERS,
	foldersBelow,
	hasSentences,
	KNOWN_PACKAGES,
	packagesFor,
	pathOf,
	ROOMS,
	specifier,
} from './layers.ts';
import { type Finding, lintPlanted } from './lint-planted.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const real = readdirSync(join(root, 'src'), { recursive: true, withFileTypes: true })
	.filter((entry) => entry.isDirectory())
	.map((entry) => relative(join(root, 'src'), join(entry.parentPath, entry.name)));
const everyFolder = [...new Set([...FOLDERS, ...real])];

const GLOBALS = {
	Date: 'Date.now()',
	performance: 'performance.now()',
	console: "console.log('')",
	globalThis: 'globalThis.name',
	crypto: 'crypto.randomUUID()',
	fetch: "fetch('')",
	setTimeout: 'setTimeout(f, 1)',
	setInterval: 'setInterval(f, 1)',
	setImmediate: 'setImmediate(f)',
	process: 'process.env',
};
const TERMINAL_MAY = ['setTimeout', 'setInterval', 'setImmediate', 'process'];
const globalNames = Object.keys(GLOBALS);

const FORMS = [
	"import '../ui/other.tsx';",
	"import type { T } from '../ui/other.tsx';",
	"export { type T } from '../ui/other.tsx';",
	"export const a = import('../ui/other.tsx');",
	"import '../base/../ui/other.tsx';",
	"import './../ui/other.tsx';",
	"import '../new-folder/other.ts';",
	"import 'new-package';",
	"import 'node:fs/promises';",
];
/** From a room of the plan: what stands above it, by every road, and the plan's own files but its types. */
const ROOM_FORMS = [
	"import '../new-room/other.ts';",
	"import type { T } from '../../report/other.ts';",
	"import '../../plan/advice/other.ts';",
	"import './../advice/other.ts';",
	"import '../../base/../ui/other.tsx';",
	"export { type T } from '../make-plan.ts';",
	"export const a = import('../plan-json.ts');",
];
const CHANCE = [
	'export const a = Math.random();',
	"export const b = Math['random']();",
	'export const { random } = Math;',
	'export const c = Math;',
];

/** Sentences, whole and in pieces, that no folder but `words` may hold. */
const SENTENCES = [
	"export const a = 'Press any key twice.';",
	'export const b = () => `they say so`;',
	"export const c = 'first slot: none, or all';",
	"export const d = [`what isn't there`];",
];
/** What looks like one and is none. */
const NO_SENTENCES = [
	'/** Two words, and more of them. */',
	"export const e = 'rackside plan --sheet';",
	"export const f = 'NO BACKUP';",
	"export const g = () => { throw new Error('this cannot be'); };",
	"export type H = 'cut-short' | 'to-come';",
];

const files = new Map<string, readonly string[]>();
const targetsOf = (folder: string) => [
	...everyFolder.map((to) => ({ name: to, written: specifier(folder, to) })),
	...KNOWN_PACKAGES.map((name) => ({ name, written: name })),
];
for (const folder of everyFolder) {
	const imports = targetsOf(folder).map(({ written }) => `import '${written}';`);
	files.set(`${pathOf(folder)}/imports.ts`, [...imports, "import '../nowhere/other.ts';"]);
	files.set(`${pathOf(folder)}/sentences.ts`, SENTENCES);
	files.set(`${pathOf(folder)}/no-sentences.ts`, NO_SENTENCES);
	const uses = Object.values(GLOBALS).map((use, at) => `export const g${at} = ${use};`);
	files.set(`${pathOf(folder)}/edges.ts`, [...uses, ...CHANCE.slice(0, 1)]);
}
files.set('src/plan/forms.ts', FORMS);
for (const room of ROOMS) {
	files.set(`${pathOf(room)}/forms.ts`, [...ROOM_FORMS, "import type { Plan } from '../plan.ts';"]);
	files.set(`${pathOf(room)}/inline.ts`, ["export type T = import('../../ui/other.tsx').T;"]);
}
files.set('src/plan/inline.ts', ["export type T = import('../ui/other.tsx').T;"]);
files.set('src/plan/chance.ts', CHANCE);
files.set('src/plan/default.ts', ['export default 1;']);
files.set('src/plan/all.ts', ["export * from './clean.ts';"]);
files.set('src/plan/four.ts', [
	'export const four = (a: number, b: number, c: number, d: number) => a + b + c + d;',
]);
files.set('src/plan/ending.ts', ["import './clean.js';", "import './clean';"]);
files.set('src/plan/CamelCase.ts', ['export const a = 1;']);
files.set('src/plan/one.ts', [
	"import { two } from './two.ts';",
	'export const one = () => two();',
]);
files.set('src/plan/two.ts', [
	"import { one } from './one.ts';",
	'export const two = () => one();',
]);
files.set('src/rig/one.ts', ["import type { Two } from './two.ts';", 'export type One = Two[];']);
files.set('src/rig/two.ts', ["import type { One } from './one.ts';", 'export type Two = One[];']);
files.set('src/plan/clean.ts', [
	"import type { Other } from '../base/other.ts';",
	'export const clean = (other: Other, atMs: number) => [other, Math.max(atMs, 0)];',
]);
files.set('tests/plan/free.test.ts', ["import 'fast-check';", "import '../../src/ui/other.tsx';"]);

let findings: readonly Finding[] = [];
const linesOf = (path: string, rule: string) => {
	const lines = findings.filter((f) => f.path === path && f.rule === rule).map((f) => f.line);
	return [...new Set(lines)].toSorted((a, b) => a - b);
};
const rulesIn = (path: string) => [
	...new Set(findings.filter((f) => f.path === path).map((f) => f.rule)),
];
const allLines = (lines: readonly string[]) => lines.map((_, at) => at + 1);

beforeAll(async () => {
	findings = await lintPlanted(files);
});

test('every folder of the program has its place in the order', () => {
	expect(real.filter((name) => !FOLDERS.includes(name))).toEqual([]);
});

describe.each(everyFolder)('%s', (folder) => {
	test('imports what stands below it and nothing else', () => {
		const path = `${pathOf(folder)}/imports.ts`;
		const refused = linesOf(path, 'noRestrictedImports');
		const targets = targetsOf(folder).map(({ name }) => name);
		const allowed = targets.filter((_, at) => !refused.includes(at + 1));
		const expected = [folder, ...foldersBelow(folder), ...packagesFor(folder)];
		expect(allowed.toSorted()).toEqual(expected.toSorted());
	});

	test('refuses a folder that is on no list', () => {
		const path = `${pathOf(folder)}/imports.ts`;
		expect(linesOf(path, 'noRestrictedImports')).toContain(files.get(path)?.length);
	});

	test('holds what people read only if it is the folder for that', () => {
		const refused = linesOf(`${pathOf(folder)}/sentences.ts`, 'plugin');
		expect(refused).toEqual(hasSentences(folder) ? [] : allLines(SENTENCES));
		expect(linesOf(`${pathOf(folder)}/no-sentences.ts`, 'plugin')).toEqual([]);
	});

	test('reaches time, chance and the process only at the edge', () => {
		const path = `${pathOf(folder)}/edges.ts`;
		const refused = linesOf(path, 'noRestrictedGlobals');
		const reached = globalNames.filter((_, at) => !refused.includes(at + 1));
		const isEdge = folder === 'disk' || folder.startsWith('cli');
		expect(reached).toEqual(isEdge ? globalNames : folder === 'terminal' ? TERMINAL_MAY : []);
		expect(linesOf(path, 'plugin')).toEqual(isEdge ? [] : [globalNames.length + 1]);
	});
});

test('an upward import is refused however it is written', () => {
	expect(linesOf('src/plan/forms.ts', 'noRestrictedImports')).toEqual(allLines(FORMS));
	expect(linesOf('src/plan/inline.ts', 'plugin')).toEqual([1]);
});

test.each(ROOMS)(
	'%s knows of the plan what it says, and reaches nothing above by other roads',
	(room) => {
		expect(linesOf(`${pathOf(room)}/forms.ts`, 'noRestrictedImports')).toEqual(
			allLines(ROOM_FORMS),
		);
		expect(linesOf(`${pathOf(room)}/inline.ts`, 'plugin')).toEqual([1]);
	},
);

test('chance is refused by whatever road', () => {
	expect(linesOf('src/plan/chance.ts', 'plugin')).toEqual(allLines(CHANCE));
});

test.each([
	['src/plan/default.ts', 'noDefaultExport', [1]],
	['src/plan/all.ts', 'noReExportAll', [1]],
	['src/plan/four.ts', 'useMaxParams', [1]],
	['src/plan/ending.ts', 'useImportExtensions', [1, 2]],
	['src/plan/CamelCase.ts', 'useFilenamingConvention', [0]],
	['src/plan/one.ts', 'noImportCycles', [1]],
	['src/rig/one.ts', 'noImportCycles', [1]],
])('%s breaks %s', (path, rule, lines) => {
	expect(linesOf(path, rule)).toEqual(lines);
});

test('a clean file passes, and tests may import everything', () => {
	expect(rulesIn('src/plan/clean.ts')).toEqual([]);
	expect(rulesIn('tests/plan/free.test.ts')).toEqual([]);
});

test('nobody has switched a check of the order off in a file', () => {
	const guarded =
		/biome-ignore.*(lint:|plugin|noRestricted|noImportCycles|noDefaultExport|noReExportAll)/;
	const paths = ['machines', 'src']
		.flatMap((name) => readdirSync(join(root, name), { recursive: true, withFileTypes: true }))
		.filter((entry) => /\.tsx?$/.test(entry.name))
		.map((entry) => join(entry.parentPath, entry.name));
	expect(paths.length).toBeGreaterThan(0);
	expect(paths.filter((path) => guarded.test(readFileSync(path, 'utf8')))).toEqual([]);
	expect(guarded.test('// biome-ignore lint/style/noRestrictedImports: because')).toBe(true);
});
