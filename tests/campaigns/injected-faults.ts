// Lets single calls of the system fail, or kill, a program that keeps a night, by strace, and holds what must
// hold: nothing that was made or shown as saved is lost, nothing is invented, the next start takes it up.

import { spawnSync } from 'node:child_process';
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { nightName } from '../disk/night-steps.ts';
import { lookAtSteps, missingSteps, saidIn } from './kill-rounds.ts';
import type { OwnFolder } from './own-folder.ts';

const program = fileURLToPath(new URL('kill-writer.ts', import.meta.url));
const stepsEach = 6;

/** What happens to which calls: `how` in strace's words, `error=EIO` or `signal=SIGKILL`. */
export type Fault = { readonly call: string; readonly how: string };

/** A fault at the n-th such call of each thread, counted from 1. */
export type FaultAt = Fault & { readonly at: number };

/** `isReached` says whether there was such a call at all. */
export type FaultyNight = {
	readonly isReached: boolean;
	readonly runs: number;
	readonly faults: readonly string[];
};

/** Why no call can be made to fail here; null when it can. */
export function whyNoInjection(): string | null {
	const { error, status } = spawnSync('strace', [
		'-f',
		'-qq',
		'-o',
		'/dev/null',
		'-e',
		'trace=none',
		'true',
	]);
	if (error) return 'there is no strace on this machine';
	return status === 0 ? null : 'strace may not trace here';
}

/**
 * A night in a new folder of this name: begun with the faults, gone on with after a torn end with the same
 * ones, and once more with them `again` calls in, then taken up with none.
 */
export function nightWithFaults(
	own: OwnFolder,
	name: string,
	faults: readonly FaultAt[],
	again: number,
): FaultyNight {
	const night = new NightUnderFaults(own, name);
	const first = night.run(faults);
	night.tear();
	const second = night.run(faults);
	night.run(faults.map((fault) => ({ ...fault, at: again })));
	night.run([]);
	return { isReached: first || second, runs: 4, faults: night.faults };
}

class NightUnderFaults {
	readonly faults: string[] = [];
	readonly #own: OwnFolder;
	readonly #name: string;
	#runs = 0;
	#steps = 0;
	#saved = 0;

	constructor(own: OwnFolder, name: string) {
		this.#own = own;
		this.#name = name;
	}

	/** What a write leaves that never came to its end. */
	tear(): void {
		const file = `${nightName}.journal`;
		// A night that was never begun has no end.
		if (!existsSync(join(this.#own.path, this.#name, file))) return;
		appendFileSync(this.#own.below(this.#name, file), '1234abcd {"v":2,"s"');
	}

	/** Runs the program; true when one of the faults came. */
	run(faults: readonly FaultAt[]): boolean {
		this.#runs += 1;
		const folder = this.#own.below(this.#name);
		const log = this.#own.below(`${this.#name}.calls`);
		const writes = [process.execPath, program, folder, `writer-${this.#runs}`, String(stepsEach)];
		const [command = '', ...args] = [
			...(faults.length === 0 ? [] : strace(faults, { folder, log })),
			...writes,
		];
		const ran = spawnSync(command, args, {
			encoding: 'utf8',
			timeout: 60_000,
			killSignal: 'SIGKILL',
			// With one thread at the disk, a call's number means the same in every run.
			env: { ...process.env, UV_THREADPOOL_SIZE: '1' },
		});
		if (ran.error) throw ran.error;
		const isKilled = ran.signal === 'SIGKILL' || ran.status === 137;
		const isKill = faults.some(({ how }) => how.includes('SIGKILL'));
		const said = saidIn(ran.stdout);
		// It may say that it cannot begin; once it has, a fault is no reason to end.
		const hasFailed = ran.status !== 0 && said.open !== null;
		if (isKilled ? !isKill : hasFailed)
			this.#tell(`ended as ${ran.signal ?? ran.status}: ${ran.stderr}`);
		if (said.open === null ? faults.length === 0 : said.open !== this.#steps) {
			this.#tell(`${this.#steps} steps were there, ${said.open ?? 'none'} were taken up`);
		}
		const typed = Math.max(this.#steps, said.typed);
		this.#saved = Math.max(this.#saved, said.saved);
		const seen = lookAtSteps(folder);
		this.#steps = seen.steps;
		for (const fault of [
			...seen.faults,
			...missingSteps(seen.steps, { typed, saved: this.#saved }),
		])
			this.#tell(fault);
		return isKilled || (faults.length > 0 && readFileSync(log, 'utf8').includes('(INJECTED)'));
	}

	#tell(fault: string): void {
		this.faults.push(`${this.#name}, run ${this.#runs}: ${fault}`);
	}
}

/** A fault that kills may come at any call; one that only fails is for the night's own files and folder. */
function strace(
	faults: readonly FaultAt[],
	{ folder, log }: { readonly folder: string; readonly log: string },
): string[] {
	const isKill = faults.some(({ how }) => how.includes('SIGKILL'));
	const files = ['', '.2', '.3', '.4', '.5'].flatMap((number) => [
		`${folder}/${nightName}${number}.journal`,
		`${folder}/${nightName}${number}.journal.new`,
	]);
	return [
		...['strace', '-f', '-qq', '-o', log],
		// With the kernel's filter strace is quicker, but its kills do not come.
		...(isKill ? [] : ['--seccomp-bpf']),
		...(isKill ? [] : [folder, ...files].flatMap((path) => ['-P', path])),
		...['-e', `trace=${faults.map(({ call }) => call).join(',')}`],
		...faults.flatMap(({ call, how, at }) => ['-e', `inject=${call}:${how}:when=${at}`]),
	];
}
