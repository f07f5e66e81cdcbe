// From the start of the process to the first full frame of a night taken up again, in a real pty,
// against the smallest Ink app of the same size, bundled the same way.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { spawn } from '@lydell/node-pty';
import { build } from 'esbuild';
import { showIdentity } from '../../src/disk/paths.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { keepLongNight } from './long-night.ts';
import { median } from './rounds.ts';

const COLUMNS = 80;
const ROWS = 24;
const SHOW = join(import.meta.dirname, '../../shows/club.yaml');
const LONG_ENTRIES = 10_000;

const MINIMAL = `
import { createElement as h } from 'react';
import { Box, render, Text } from 'ink';
const rows = Array.from({ length: ${ROWS} }, (_, i) => h(Text, { key: i }, i === ${ROWS - 1} ? 'minimal frame is whole' : 'row ' + i));
render(h(Box, { flexDirection: 'column', width: ${COLUMNS}, height: ${ROWS} }, rows), {
	alternateScreen: true, incrementalRendering: true, maxFps: 120, exitOnCtrlC: false, interactive: true,
});
setInterval(() => {}, 1000);
`;

/** Milliseconds until the terminal has been sent the text; the process is then killed. */
function untilShown(
	args: readonly string[],
	env: Record<string, string>,
	text: string,
): Promise<number> {
	return new Promise((resolve, reject) => {
		const began = process.hrtime.bigint();
		const pty = spawn(process.execPath, [...args], {
			cols: COLUMNS,
			rows: ROWS,
			env: { ...process.env, TERM: 'xterm-256color', ...env },
		});
		let seen = '';
		const late = setTimeout(() => {
			pty.kill('SIGKILL');
			reject(new Error(`never shown: ${text}`));
		}, 20_000);
		pty.onData((data) => {
			seen += data;
			if (!seen.includes(text)) return;
			clearTimeout(late);
			const ms = Number(process.hrtime.bigint() - began) / 1e6;
			pty.onExit(() => resolve(ms));
			pty.kill('SIGKILL');
		});
	});
}

export async function benchStart(rounds: number): Promise<readonly string[]> {
	const folder = mkdtempSync(join(tmpdir(), 'rackside-bench-'));
	try {
		writeFileSync(join(folder, 'minimal.mjs'), MINIMAL);
		await build({
			entryPoints: [join(folder, 'minimal.mjs')],
			outfile: join(folder, 'out.mjs'),
			bundle: true,
			platform: 'node',
			format: 'esm',
			target: 'node22',
			nodePaths: [join(import.meta.dirname, '../../node_modules')],
			define: { 'process.env.NODE_ENV': '"production"', fetch: 'undefined' },
			alias: { 'react-devtools-core': join(import.meta.dirname, '../../.ci/no-devtools.mjs') },
			banner: {
				js: 'import{createRequire as r}from"node:module";const require=r(import.meta.url);',
			},
			logLevel: 'error',
		});
		const env = { RACKSIDE_DATA: join(folder, 'data') };
		const minimal = () => untilShown([join(folder, 'out.mjs')], {}, 'minimal frame is whole');
		const resumed = () => untilShown(['dist/rackside.js', 'run', SHOW], env, 'dark');
		const long = { RACKSIDE_DATA: join(folder, 'long') };
		const show = loadShow(SHOW);
		const nights = join(long.RACKSIDE_DATA, 'nights');
		await keepLongNight(nights, { show, path: showIdentity(SHOW), entries: LONG_ENTRIES });
		const resumedLong = () => untilShown(['dist/rackside.js', 'run', SHOW], long, 'dark');
		await minimal();
		await resumed();
		await resumedLong();
		const taken: Record<'minimal' | 'resumed' | 'long', number[]> = {
			minimal: [],
			resumed: [],
			long: [],
		};
		for (let round = 0; round < rounds; round++) {
			taken.minimal.push(await minimal());
			taken.resumed.push(await resumed());
			taken.long.push(await resumedLong());
		}
		const [a, b, c] = [median(taken.minimal), median(taken.resumed), median(taken.long)];
		return [
			`${'minimal Ink app, first full frame'.padEnd(44)} ${a.toFixed(0).padStart(6)} ms`,
			`${'a resumed night, first full frame'.padEnd(44)} ${b.toFixed(0).padStart(6)} ms  ${(b / a).toFixed(2).padStart(6)} x minimal  (target <= 1.2)`,
			`${`a resumed night of ${LONG_ENTRIES} entries`.padEnd(44)} ${c.toFixed(0).padStart(6)} ms  ${(c / b).toFixed(2).padStart(6)} x the short one`,
		];
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
}
