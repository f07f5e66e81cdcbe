// How the bundles reach Node's own modules: at no more cost than what is used of them.

import { builtinModules } from 'node:module';

const builtIn = new Set([...builtinModules, ...builtinModules.map((name) => `node:${name}`)]);

/**
 * An import of Node's own modules reads every property that they have, and so opens the input and loads
 * streams and decoders that nobody asked for, two milliseconds at every start. A require reads none.
 */
export const requireBuiltIn = {
	name: 'require-built-in',
	setup({ onResolve, onLoad }) {
		onResolve({ filter: /^[\w:/]+$/ }, ({ path, kind }) =>
			kind === 'import-statement' && builtIn.has(path)
				? { path, namespace: 'built-in' }
				: undefined,
		);
		onLoad({ filter: /.*/, namespace: 'built-in' }, ({ path }) => ({
			contents: `module.exports = require(${JSON.stringify(path)});`,
		}));
	},
};

/** What a few commands call once, and what others need not wait for: each takes milliseconds to be loaded. */
const LATE = ['crypto', 'net', 'os', 'readline/promises', 'v8', 'zlib'];

/** These are loaded when one of their functions is called; in the program nothing but functions is asked of them. */
export const lateBuiltIn = {
	name: 'late-built-in',
	setup({ onResolve, onLoad }) {
		const filter = new RegExp(`^node:(${LATE.join('|')})$`);
		onResolve({ filter }, ({ path, kind }) =>
			kind === 'import-statement' ? { path, namespace: 'late' } : undefined,
		);
		onLoad({ filter: /.*/, namespace: 'late' }, async ({ path }) => {
			const functions = Object.entries(await import(path)).filter(
				([name, value]) => name !== 'default' && typeof value === 'function',
			);
			const late = ([name]) =>
				`export const ${name} = (...given) => require(${JSON.stringify(path)}).${name}(...given);`;
			return { contents: functions.map(late).join('\n') };
		});
		// An import of it would go through all that it has.
		onResolve({ filter: /^node:process$/ }, () => ({ path: 'process', namespace: 'global' }));
		onLoad({ filter: /.*/, namespace: 'global' }, ({ path }) => ({
			contents: `export default ${path};`,
		}));
	},
};
