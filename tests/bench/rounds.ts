// Timing that holds on a busy machine: the things compared take turns, and what counts is the ratio of
// their medians within one run.

import { spawnSync } from 'node:child_process';

export type Contestant = { readonly name: string; readonly run: () => number };

/** Milliseconds that a command takes as a whole process; throws when it does not end as it should. */
export function processMs(
	command: string,
	args: readonly string[],
	isFine = (code: number | null): boolean => code === 0,
): number {
	const began = process.hrtime.bigint();
	const { status, stderr } = spawnSync(command, [...args], { encoding: 'utf8' });
	const ended = process.hrtime.bigint();
	if (!isFine(status))
		throw new Error(`${command} ${args.join(' ')} ended with ${status}: ${stderr}`);
	return Number(ended - began) / 1e6;
}

/** Milliseconds of processor that a command takes as a whole process, which other work beside it hardly moves. */
export function processorMs(command: string, args: readonly string[]): number {
	// Bash says what its children took (POSIX, `times`): user and system on its second line.
	const script = '"$@" >/dev/null; [ $? -le 1 ] && times';
	const { status, stdout, stderr } = spawnSync('bash', ['-c', script, 'bash', command, ...args], {
		encoding: 'utf8',
	});
	const parts = stdout.split('\n')[1]?.match(/[\d.]+(?=s)/g) ?? [];
	if (status !== 0 || parts.length !== 2)
		throw new Error(`${command} ${args.join(' ')} was not measured: ${stderr}`);
	return parts.reduce((sum, seconds) => sum + Number(seconds) * 1000, 0);
}

/** Milliseconds that a piece of work takes inside this process. */
export function workMs(work: () => void): number {
	const began = process.hrtime.bigint();
	work();
	return Number(process.hrtime.bigint() - began) / 1e6;
}

export function median(values: readonly number[]): number {
	const sorted = [...values].sort((a, b) => a - b);
	const upper = sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
	const lower = sorted[Math.floor((sorted.length - 1) / 2)] ?? Number.NaN;
	return (upper + lower) / 2;
}

/** The value below which this share of the values lies. */
export function quantile(values: readonly number[], share: number): number {
	const sorted = [...values].sort((a, b) => a - b);
	return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}

/** The median of each contestant over so many interleaved rounds, after one that does not count. */
export function takeTurns(contestants: readonly Contestant[], rounds: number): readonly number[] {
	for (const one of contestants) one.run();
	const taken = contestants.map((): number[] => []);
	for (let round = 0; round < rounds; round++) {
		for (const [index, one] of contestants.entries()) taken[index]?.push(one.run());
	}
	return taken.map(median);
}
