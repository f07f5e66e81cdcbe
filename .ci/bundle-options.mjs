// How src is bundled, whatever form the bundle has.

import { join } from 'node:path';

/** esbuild's options in the checkout at `root`. */
export function bundleOptions(root) {
	return {
		absWorkingDir: root,
		bundle: true,
		// Where node_modules is a link, packages still have the paths that the lock file gives them.
		preserveSymlinks: true,
		platform: 'node',
		format: 'esm',
		jsx: 'automatic',
		// Yoga's loader looks at fetch, which makes Node load its HTTP client at start.
		define: { 'process.env.NODE_ENV': '"production"', fetch: 'undefined' },
		alias: {
			'react-devtools-core': join(root, '.ci/no-devtools.mjs'),
			'string-width': join(root, '.ci/late-string-width.mjs'),
		},
		logLevel: 'warning',
	};
}
