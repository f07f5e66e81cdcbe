// The page of an instrument, made from show, session and plan: all targets, steps, tensions and what the
// ear will say. The first is made as it is shipped: bundled, and its code kept from the start before.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { pageOnRack } from './page-on-rack.ts';
import { median, quantile, workMs } from './rounds.ts';

const PAGES = 200;
const SHOWS = new URL('../../shows/', import.meta.url);

export async function benchTuningPage(rounds: number): Promise<readonly string[]> {
	const first = await firstMs(rounds);
	const make = pageOnRack(SHOWS);
	const taken = Array.from({ length: rounds * PAGES }, () => workMs(make));
	const row = (name: string, ms: number) =>
		`${name.padEnd(44)} ${ms.toFixed(3).padStart(8)} ms  (target <= 2)`;
	return [
		row('tuning page of an instrument, first', median(first)),
		row('tuning page of an instrument, median', median(taken)),
		row('tuning page of an instrument, 99 %', quantile(taken, 0.99)),
	];
}

/** Each in a process of its own: only once is anything the first. */
async function firstMs(rounds: number): Promise<readonly number[]> {
	const folder = mkdtempSync(join(tmpdir(), 'rackside-bench-'));
	const program = join(folder, 'first.mjs');
	await build({
		entryPoints: [fileURLToPath(new URL('./first-tuning-page.ts', import.meta.url))],
		outfile: program,
		bundle: true,
		platform: 'node',
		format: 'esm',
		target: 'node22',
	});
	const env = { ...process.env, NODE_COMPILE_CACHE: join(folder, 'code') };
	const once = (): number => {
		const asked = { encoding: 'utf8', env } as const;
		const { stdout, stderr } = spawnSync(process.execPath, [program, SHOWS.href], asked);
		const ms = Number(stdout);
		if (!(ms > 0)) throw new Error(`the first page was not made: ${stderr}`);
		return ms;
	};
	once();
	const taken = Array.from({ length: rounds }, once);
	rmSync(folder, { recursive: true });
	return taken;
}
