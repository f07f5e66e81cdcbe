// What takes long to load and is seldom needed, loaded when it is first used.

/**
 * For esbuild: has the program load Node's own modules, and string-width, at the first call of what it imports
 * of them. An import of one of Node's as an ES module has Node read all that it exports, and with it streams,
 * promises and more; cryptography or compression would be loaded for commands that never come to it.
 * string-width makes a pattern of all emoji as it is loaded, which takes as long as Node's own start; most
 * texts are counted without it.
 *
 * @param {string} source folder of the program's own code
 */
export function lateModules(source) {
	// Not node:module, of which older versions have less, as the program is to notice.
	const isLate = ({ path, kind, importer }) =>
		kind === 'import-statement' &&
		(path === 'string-width' || (path !== 'node:module' && importer.startsWith(source)));
	return {
		name: 'late-modules',
		setup(build) {
			build.onResolve({ filter: /^(node:|string-width$)/ }, (asked) =>
				isLate(asked) ? { path: asked.path, namespace: 'late' } : undefined,
			);
			build.onLoad({ filter: /./, namespace: 'late' }, async ({ path }) => ({
				contents: Object.entries(await import(path))
					.map(([name, value]) => lateExport(path, name, value))
					.join('\n'),
				resolveDir: source,
			}));
		},
	};
}

/** What is not called is read at once, where it is used at all. */
function lateExport(path, name, value) {
	const whole = `require(${JSON.stringify(path)})`;
	const one =
		name !== 'default' ? `${whole}.${name}` : path.startsWith('node:') ? whole : `${whole}.default`;
	const late =
		typeof value !== 'function'
			? `/* @__PURE__ */ (() => ${one})()`
			: /^[A-Z]/.test(name)
				? `function (...given) { return new (${one})(...given); }`
				: `(...given) => ${one}(...given)`;
	return `${name === 'default' ? 'export default' : `export const ${name} =`} ${late};`;
}
