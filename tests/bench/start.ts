// From the start of the process to the first full frame of a night taken up again, in a real pty,
// against the smallest Ink app of the same size, bundled the same way.

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { showIdentity } from '../../src/disk/paths.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { BenchPty } from './bench-pty.ts';
import { keepLongNight } from './long-night.ts';
import { bundleMinimalApp, WHOLE } from './minimal-app.ts';
import { median } from './rounds.ts';

const SHOW = join(import.meta.dirname, '../../shows/club.yaml');
const LONG_ENTRIES = 10_000;

/** Milliseconds until the terminal has been sent the text; the process is then killed. */
async function untilShown(
	args: readonly string[],
	env: Record<string, string>,
	text: string,
): Promise<number> {
	const began = process.hrtime.bigint();
	const pty = new BenchPty(args, env);
	await pty.until(text);
	const ms = Number(process.hrtime.bigint() - began) / 1e6;
	await pty.kill();
	return ms;
}

/** Has the command started and left once, as nobody's first start is: what it compiled is kept at its end. */
async function leaveOnce(args: readonly string[], env: Record<string, string>): Promise<void> {
	const pty = new BenchPty(args, env);
	await pty.until('dark');
	pty.write('q\r');
	await pty.end();
}

export async function benchStart(rounds: number): Promise<readonly string[]> {
	const folder = mkdtempSync(join(tmpdir(), 'rackside-bench-'));
	try {
		const app = await bundleMinimalApp(folder);
		const env = { RACKSIDE_DATA: join(folder, 'data') };
		const minimal = () => untilShown([app], {}, WHOLE);
		const resumed = () => untilShown(['dist/rackside.js', 'run', SHOW], env, 'dark');
		const long = { RACKSIDE_DATA: join(folder, 'long') };
		const show = loadShow(SHOW);
		const nights = join(long.RACKSIDE_DATA, 'nights');
		await keepLongNight(nights, { show, path: showIdentity(SHOW), entries: LONG_ENTRIES });
		const resumedLong = () => untilShown(['dist/rackside.js', 'run', SHOW], long, 'dark');
		await minimal();
		await leaveOnce(['dist/rackside.js', 'run', SHOW], env);
		await leaveOnce(['dist/rackside.js', 'run', SHOW], long);
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
			`${'a resumed night, first full frame'.padEnd(44)} ${b.toFixed(0).padStart(6)} ms  ${(b / a).toFixed(2).padStart(6)} x minimal  (target <= 1.3)`,
			`${`a resumed night of ${LONG_ENTRIES} entries`.padEnd(44)} ${c.toFixed(0).padStart(6)} ms  ${(c / b).toFixed(2).padStart(6)} x the short one`,
		];
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
}
