// `npm run bench -- against REF`: one table of this checkout and that commit, each measured by its own benchmarks, in
// turn. Rows of the same name stand side by side; one that only one of them measures has nothing beside it.

import { execFileSync } from 'node:child_process';
import {
	mkdirSync,
	mkdtempSync,
	readdirSync,
	readFileSync,
	rmSync,
	statSync,
	symlinkSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { textTable } from '../../src/base/text-table.ts';
import { median } from './rounds.ts';

const HERE = join(import.meta.dirname, '../..');
const PARTS = ['commands', 'start', 'replay', 'keys'];
/** Times that each is measured, the other in between; minutes each. */
const TURNS = Number(process.env.BENCH_TURNS ?? 3);
/** Enough for its memory to have settled. */
const KEYS = process.env.BENCH_KEYS ?? '2000';

/** What one row says; `times` is a ratio within its run, null where it has none. */
type Figure = { readonly value: number; readonly unit: string; readonly times: number | null };
type Figures = ReadonlyMap<string, Figure>;

/** Prints the table; `ref` is whatever git knows a commit by. */
export function benchAgainst(ref: string): void {
	const aside = mkdtempSync(join(tmpdir(), 'rackside-against-'));
	try {
		const there = checkedOut(ref, aside);
		const commit = (name: string) => git('show', '-s', '--format=%h, %cs', name);
		const changed = git('status', '--porcelain') === '' ? '' : ' and what is not committed';
		const turns = Array.from({ length: TURNS }, (_, turn) => {
			const measured = [there, HERE].map((checkout) =>
				figuresOf(checkout, join(aside, 'compiled')),
			);
			process.stderr.write(`turn ${turn + 1} of ${TURNS} is measured\n`);
			return measured;
		});
		const side = (checkout: string, at: number): Figures =>
			new Map([...middle(turns.map((turn) => turn[at] ?? new Map())), ...sizesOf(checkout)]);
		const [before, after] = [side(there, 0), side(HERE, 1)];
		const names = [...new Set([...after.keys(), ...before.keys()])];
		const rows = names.map((name) => [
			name,
			shown(before.get(name)),
			shown(after.get(name)),
			ratio(before.get(name), after.get(name)),
		]);
		const heads = [
			`Node ${process.versions.node}`,
			commit(ref),
			commit('HEAD') + changed,
			'after / before',
		];
		for (const line of textTable(heads, rows)) console.log(line);
	} finally {
		rmSync(aside, { recursive: true, force: true });
	}
}

function git(...args: readonly string[]): string {
	return execFileSync('git', args, { cwd: HERE, encoding: 'utf8' }).trim();
}

/** That commit in a folder of its own, with its packages, built. */
function checkedOut(ref: string, aside: string): string {
	const folder = join(aside, 'checkout');
	mkdirSync(folder);
	const files = execFileSync('git', ['archive', ref], { cwd: HERE, maxBuffer: 1e9 });
	execFileSync('tar', ['-x', '-C', folder], { input: files });
	const lockOf = (checkout: string) => readFileSync(join(checkout, 'package-lock.json'), 'utf8');
	if (lockOf(folder) === lockOf(HERE)) {
		symlinkSync(join(HERE, 'node_modules'), join(folder, 'node_modules'));
		execFileSync(process.execPath, ['.ci/build.mjs'], { cwd: folder });
	} else {
		execFileSync('npm', ['ci', '--no-audit', '--no-fund'], { cwd: folder });
	}
	return folder;
}

/** What its own benchmarks say, by the names of their rows. */
function figuresOf(checkout: string, compiled: string): Figures {
	const env = { ...process.env, XDG_CACHE_HOME: compiled, BENCH_KEYS: KEYS };
	const run = (part: string) =>
		execFileSync(process.execPath, ['tests/bench/run.ts', part], {
			...{ cwd: checkout, env, encoding: 'utf8' },
			stdio: ['ignore', 'pipe', 'inherit'],
		});
	mkdirSync(compiled, { recursive: true });
	return new Map(PARTS.flatMap((part) => run(part).split('\n').flatMap(readRow)));
}

/** `name   214 ms   5.87 x bare node  (target <= 5)`, as the benchmarks print them. */
const ROW = /^(?<name>.*?\S) {2,}(?<value>[\d.]+) ?(?<unit>\w+|%)?(?: +(?<times>[\d.]+) x )?/;

function readRow(line: string): readonly (readonly [string, Figure])[] {
	const { name, value, unit, times } = ROW.exec(line)?.groups ?? {};
	if (name === undefined || value === undefined) return [];
	const figure = { value: Number(value), unit: unit ?? '' };
	return [[name, { ...figure, times: times === undefined ? null : Number(times) }]];
}

/** The median of each row over the turns. */
function middle(turns: readonly Figures[]): Figures {
	const names = new Set(turns.flatMap((turn) => [...turn.keys()]));
	return new Map(
		[...names].map((name) => {
			const all = turns.flatMap((turn) => turn.get(name) ?? []);
			const times = all.flatMap((one) => one.times ?? []);
			return [
				name,
				{
					value: median(all.map((one) => one.value)),
					unit: all[0]?.unit ?? '',
					times: times.length === 0 ? null : median(times),
				},
			];
		}),
	);
}

function shown(figure: Figure | undefined): string {
	if (figure === undefined) return '-';
	const { value, unit, times } = figure;
	const plain = `${Number(value.toFixed(2))} ${unit}`.trim();
	return times === null ? plain : `${plain}, ${times.toFixed(2)} x`;
}

/** Of the ratios within a run where there are some, since those hold on a busy machine. */
function ratio(before: Figure | undefined, after: Figure | undefined): string {
	if (before === undefined || after === undefined) return '';
	const isWithin = before.times !== null && after.times !== null;
	const [one, other] = isWithin
		? [before.times ?? 0, after.times ?? 0]
		: [before.value, after.value];
	return one === 0 ? '' : (other / one).toFixed(2);
}

/** How large the checkout is, what is built of it, and what a user installs. */
function sizesOf(checkout: string): Figures {
	const filesIn = (folder: string) =>
		readdirSync(join(checkout, folder), { recursive: true, encoding: 'utf8' })
			.map((name) => join(checkout, folder, name))
			.filter((path) => statSync(path).isFile());
	const source = ['src', 'machines'].flatMap(filesIn);
	const built = filesIn('dist');
	const lock = JSON.parse(readFileSync(join(checkout, 'package-lock.json'), 'utf8'));
	const packages = Object.entries<{ readonly dev?: true }>(lock.packages).filter(
		([path]) => path !== '',
	);
	const linesIn = (paths: readonly string[]) =>
		paths.reduce((sum, path) => sum + readFileSync(path, 'utf8').split('\n').length - 1, 0);
	const tests = filesIn('tests').filter((path) => /\.tsx?$/.test(path));
	const count = (value: number, unit = ''): Figure => ({ value, unit, times: null });
	return new Map([
		['lines of source', count(linesIn(source))],
		['files of source', count(source.length)],
		['lines of tests', count(linesIn(tests))],
		['deepest chain of imports', count(deepestImport(source))],
		['files of dist', count(built.length)],
		['dist', count(built.reduce((sum, path) => sum + statSync(path).size, 0) / 1e6, 'MB')],
		['packages that users install', count(packages.filter(([, { dev }]) => !dev).length)],
		['packages in all', count(packages.length)],
	]);
}

/** The most files that import one another in a row; types and what is loaded later left out. */
function deepestImport(files: readonly string[]): number {
	const known = new Map<string, number>();
	const depthOf = (path: string): number => {
		const before = known.get(path);
		if (before !== undefined) return before;
		known.set(path, 0);
		const text = readFileSync(path, 'utf8').replace(/^(?:im|ex)port type [^;]*;/gm, '');
		const imported = [...text.matchAll(/from '(\.[^']+)'/g)]
			.map(([, name = '']) => resolve(dirname(path), name))
			.filter((name) => files.includes(name));
		const depth = 1 + Math.max(0, ...imported.map(depthOf));
		known.set(path, depth);
		return depth;
	};
	return Math.max(...files.map(depthOf));
}
