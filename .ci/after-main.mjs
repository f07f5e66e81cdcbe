// What is loaded later is only ever asked for by the program's first part, which is there by then. Told so, the
// bundler keeps that part and all that it shares with others in one file, where it would cut it into a dozen by who
// else may use what; each file that Node looks up costs a start about half a millisecond.

import { join } from 'node:path';

const later = 'later';

/** A plugin for esbuild in the checkout at `root`: everything of src that is loaded later comes after main.ts. */
export function afterMain(root) {
	const main = join(root, 'src/cli/main.ts');
	return {
		name: 'after-main',
		setup: (bundler) => {
			bundler.onResolve({ filter: /^\.{1,2}\// }, ({ path, kind, resolveDir }) => {
				const place = join(resolveDir, path);
				const isLater = kind === 'dynamic-import' && resolveDir.startsWith(join(root, 'src'));
				return isLater && place !== main ? { path: place, namespace: later } : undefined;
			});
			bundler.onLoad({ filter: /.*/, namespace: later }, ({ path }) => ({
				contents: `import ${JSON.stringify(main)};export * from ${JSON.stringify(path)}`,
				resolveDir: root,
			}));
		},
	};
}
