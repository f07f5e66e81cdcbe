// Kills a program that keeps a night at every single call of the system that it makes while it
// begins a night, goes on with it, and takes it up again after such a kill. Needs Linux and strace.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { lookAtSteps, missingSteps, saidIn } from './kill-rounds.ts';

const program = fileURLToPath(new URL('kill-writer.ts', import.meta.url));
const calls = ['write', 'fdatasync', 'fsync', 'rename', 'ftruncate', 'unlink', 'mkdir'];
const stepsEach = 6;
let runs = 0;
let faults = 0;

/** Runs the program with a kill at the n-th such call; false when it made fewer. */
function runKilled(folder: string, call: string, n: number): boolean {
	const before = lookAtSteps(folder).steps;
	const inject = `inject=${call}:signal=SIGKILL:when=${n}`;
	const writer = `writer-${runs}`;
	const ran = spawnSync(
		'strace',
		[
			'-f',
			'-qq',
			'-o',
			'/dev/null',
			'-e',
			inject,
			process.execPath,
			program,
			folder,
			writer,
			String(stepsEach),
		],
		// With one thread at the disk, a call's number means the same in every run.
		{ encoding: 'utf8', env: { ...process.env, UV_THREADPOOL_SIZE: '1' } },
	);
	if (ran.error) throw ran.error;
	runs += 1;
	const said = saidIn(ran.stdout);
	const seen = lookAtSteps(folder);
	const typed = Math.max(before, said.typed);
	for (const fault of [...seen.faults, ...missingSteps(seen.steps, { typed, saved: said.saved })]) {
		faults += 1;
		console.log(`${call} ${n}, ${folder}: ${fault}`);
	}
	return ran.signal === 'SIGKILL' || ran.status === 137;
}

for (const call of calls) {
	let n = 1;
	for (let isKilled = true; isKilled; n += 1) {
		const folder = mkdtempSync(join(tmpdir(), 'rackside-calls-'));
		isKilled = runKilled(folder, call, n);
		// And twice more while it is taken up again.
		for (const again of [n, 1 + (n % 5)]) runKilled(folder, call, again);
		runKilled(folder, 'rename', 1_000_000);
		rmSync(folder, { recursive: true });
	}
	console.log(`${call}: killed at ${n - 2} calls, ${faults} faults so far in ${runs} runs`);
}
process.exitCode = faults === 0 ? 0 : 1;
