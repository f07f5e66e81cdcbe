// What is loaded before a command that only prints has begun: all that stands in files which Node looks up, reads and
// runs first. What gets in here by an import somewhere is paid for by every start.

import { join } from 'node:path';
import { build } from 'esbuild';
import { expect, test } from 'vitest';

const root = join(import.meta.dirname, '../..');
const { bundleOptions } = await import(join(root, '.ci/bundle-options.mjs'));
const { afterMain } = await import(join(root, '.ci/after-main.mjs'));

const { metafile } = await build({
	...(bundleOptions(root) as object),
	entryPoints: [join(root, 'src/cli/entry.ts')],
	outdir: join(root, 'dist'),
	splitting: true,
	plugins: [afterMain(root)],
	metafile: true,
	write: false,
});

/** Everything that is loaded once these are: our own files and those of packages, and Node's modules. */
function loadedWith(entries: readonly string[]): readonly string[] {
	const isOf =
		(entry: string) =>
		([, { entryPoint }]: [string, { entryPoint?: string }]) =>
			entryPoint?.endsWith(`/${entry}`) || entryPoint === entry;
	const outputs = entries.map((one) => Object.entries(metafile.outputs).find(isOf(one))?.[0] ?? '');
	const seen = new Set(outputs);
	for (const path of seen) {
		for (const { kind, path: other } of metafile.outputs[path]?.imports ?? []) {
			if (kind === 'import-statement') seen.add(other);
		}
	}
	const inside = (path: string) =>
		Object.entries(metafile.outputs[path]?.inputs ?? {}).flatMap(([input, { bytesInOutput }]) =>
			bytesInOutput > 0 ? [input] : [],
		);
	return [...seen].flatMap((path) => (path in metafile.outputs ? inside(path) : [path]));
}

const START = ['src/cli/entry.ts', 'src/cli/main.ts'];

test.each([
	['check and plan', 'src/cli/plan-commands.ts', /^src\/plan\//],
	['tuning', 'src/cli/show-commands.ts', /^src\/bench\//],
])('%s begin without nights, screens and what of Node is slow to load', (_, part, own) => {
	const loaded = loadedWith([...START, part]);
	expect(loaded.filter((one) => one.startsWith('node:')).sort()).toEqual([
		'node:module',
		'node:os',
		'node:path',
	]);
	const dear = /^node_modules\/(yaml|conf|ink|react)\/|^src\/(journal\/line|screen|keys|night|ui)/;
	expect(loaded.filter((one) => dear.test(one))).toEqual([]);
	expect(loaded.some((one) => own.test(one))).toBe(true);
});

test('tuning begins without the choice of who plays what and the machines', () => {
	const loaded = loadedWith([...START, 'src/cli/show-commands.ts']);
	const others = /^src\/plan\/(choice|timed-choice|backups|advice)\/|^node_modules\/xstate/;
	expect(loaded.filter((one) => others.test(one))).toEqual([]);
});
