// What is loaded later is only ever asked for by the program's first part, which is there by then. Told so, the
// bundler keeps that part and all that it shares with others in one file, where it would cut it into a dozen by who
// else may use what; each file that Node looks up costs a start about half a millisecond. Likewise the largest parts
// come after those that are waited for, so that these are in few files: `dist` is cut by who of them uses what, and by
// nothing else.

import { join, relative } from 'node:path';

const later = 'later';

const commands = (name) => `src/cli/${name}.ts`;
const READS_SHOW = commands('open-show');
const WAITED_FOR = ['show-commands', 'plan-commands', 'commands/report'].map(commands);

/** What is there too when one of these is loaded, beside the first part. */
const BEFORE = new Map([
	['src/showfile/read-show.ts', [READS_SHOW]],
	[commands('live/show-file'), [READS_SHOW]],
	[commands('commands/schema'), [READS_SHOW]],
	[commands('commands/new'), WAITED_FOR],
	[commands('printed-commands'), WAITED_FOR],
	[commands('practice-commands'), WAITED_FOR],
]);

/** A plugin for esbuild in the checkout at `root`: everything of src that is loaded later comes after main.ts. */
export function afterMain(root) {
	const main = commands('main');
	return {
		name: 'after-main',
		setup: (bundler) => {
			bundler.onResolve({ filter: /^\.{1,2}\// }, ({ path, kind, resolveDir }) => {
				const place = join(resolveDir, path);
				const isLater = kind === 'dynamic-import' && resolveDir.startsWith(join(root, 'src'));
				return isLater && place !== join(root, main)
					? { path: place, namespace: later }
					: undefined;
			});
			bundler.onLoad({ filter: /.*/, namespace: later }, ({ path }) => {
				const before = BEFORE.get(relative(root, path)) ?? [];
				const imports = [main, ...before].map(
					(one) => `import ${JSON.stringify(join(root, one))};`,
				);
				return {
					contents: `${imports.join('')}export * from ${JSON.stringify(path)}`,
					resolveDir: root,
				};
			});
		},
	};
}
