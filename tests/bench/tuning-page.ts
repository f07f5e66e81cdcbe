// The page of an instrument, made from show, session and plan: all targets, steps, tensions and what the
// ear will say.

import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { pageOnRack } from './page-on-rack.ts';
import { median, quantile, workMs } from './rounds.ts';

const PAGES = 200;

export async function benchTuningPage(rounds: number): Promise<readonly string[]> {
	const first = Array.from({ length: rounds }, firstMs);
	const make = pageOnRack();
	const taken = Array.from({ length: rounds * PAGES }, () => workMs(make));
	const row = (name: string, ms: number) =>
		`${name.padEnd(44)} ${ms.toFixed(3).padStart(8)} ms  (target <= 2)`;
	return [
		row('tuning page of an instrument, first', median(first)),
		row('tuning page of an instrument, median', median(taken)),
		row('tuning page of an instrument, 99 %', quantile(taken, 0.99)),
	];
}

/** In a process of its own: only once is anything the first. */
function firstMs(): number {
	const program = fileURLToPath(new URL('./first-tuning-page.ts', import.meta.url));
	const { stdout, stderr } = spawnSync(process.execPath, [program], { encoding: 'utf8' });
	const ms = Number(stdout);
	if (!(ms > 0)) throw new Error(`the first page was not made: ${stderr}`);
	return ms;
}
