// The smallest Ink app of the same size, bundled the same way: what the live screen is measured against.

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

export const COLUMNS = 80;
export const ROWS = 24;

/** What its last row says once the first frame is whole. */
export const WHOLE = 'minimal frame is whole';
/** What its first row says after so many keys: words that share no letter, since only what differs is written. */
export const afterKeys = (keys: number): string => (keys % 2 === 1 ? 'ODD' : 'ALIKE');

const SOURCE = `
import { createElement as h, useState } from 'react';
import { Box, render, Text, useInput } from 'ink';
function App() {
	const [keys, setKeys] = useState(0);
	useInput(() => setKeys((before) => before + 1));
	const rows = Array.from({ length: ${ROWS} }, (_, i) =>
		h(Text, { key: i }, i === ${ROWS - 1} ? '${WHOLE}' : i === 0 ? (keys % 2 === 1 ? 'ODD' : 'ALIKE') : 'row ' + i));
	return h(Box, { flexDirection: 'column', width: ${COLUMNS}, height: ${ROWS} }, rows);
}
render(h(App), {
	alternateScreen: true, incrementalRendering: true, maxFps: 120, exitOnCtrlC: false, interactive: true,
});
setInterval(() => {}, 1000);
`;

/** Bundles it into the folder; gives back its file. */
export async function bundleMinimalApp(folder: string): Promise<string> {
	const source = join(folder, 'minimal.mjs');
	const bundled = join(folder, 'out.mjs');
	writeFileSync(source, SOURCE);
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
