// What the live screen is measured against, bundled the same way: the smallest Ink app of the same size,
// which changes one word, and one that draws the live screen's own rows and does nothing else.

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

export const COLUMNS = 80;
export const ROWS = 24;

/** What its last row says once the first frame is whole. */
export const WHOLE = 'minimal frame is whole';

const app = (component: string) => `
import { createElement as h, useState } from 'react';
import { Box, render, Text, useInput } from 'ink';
function App() {
	const [keys, setKeys] = useState(0);
	useInput(() => setKeys((before) => before + 1));
	${component}
}
render(h(App), {
	alternateScreen: true, incrementalRendering: true, maxFps: 120, exitOnCtrlC: false, interactive: true,
});
setInterval(() => {}, 1000);
`;

const WORD_APP = app(`
	const rows = Array.from({ length: ${ROWS} }, (_, i) =>
		h(Text, { key: i }, i === ${ROWS - 1} ? '${WHOLE}' : i === 0 ? (keys % 2 === 1 ? 'ODD' : 'ALIKE') : 'row ' + i));
	return h(Box, { flexDirection: 'column', width: ${COLUMNS}, height: ${ROWS} }, rows);`);

/** Bundles the app that changes one word; gives back its file. */
export const bundleMinimalApp = (folder: string) => bundleApp(folder, 'word', WORD_APP);

/** Bundles the app that draws these screens in turn, the next at each key; gives back its file. */
export const bundleRowsApp = (folder: string, screens: readonly (readonly string[])[]) =>
	bundleApp(
		folder,
		'rows',
		app(`
	const screens = ${JSON.stringify(screens)};
	const rows = screens[keys % screens.length].map((row, i) => h(Text, { key: i }, row));
	return h(Box, { flexDirection: 'column' }, rows);`),
	);

async function bundleApp(folder: string, name: string, text: string): Promise<string> {
	const source = join(folder, `${name}.mjs`);
	const bundled = join(folder, `${name}-out.mjs`);
	writeFileSync(source, text);
	await build({
		entryPoints: [source],
		outfile: bundled,
		bundle: true,
		platform: 'node',
		format: 'esm',
		target: 'node22',
		nodePaths: [join(import.meta.dirname, '../../node_modules')],
		define: { 'process.env.NODE_ENV': '"production"', fetch: 'undefined' },
		alias: { 'react-devtools-core': join(import.meta.dirname, '../../.ci/no-devtools.mjs') },
		banner: { js: 'import{createRequire as r}from"node:module";const require=r(import.meta.url);' },
		logLevel: 'error',
	});
	return bundled;
}
