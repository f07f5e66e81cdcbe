// The order of the work alone, against the solver HiGHS on the time-indexed model of the same cases: its
// time without writing the model, ours with setting up the clock. Then how it goes on past what a solver
// can be asked.

import type { ExactOrder } from '../../src/plan/schedule/one-machine.ts';
import { exactOrder } from '../../src/plan/schedule/one-machine.ts';
import { clockCase } from '../plan/oracle/clock-case.ts';
import { clockPieces } from '../plan/oracle/clock-pieces.ts';
import { optimumOf } from '../plan/oracle/solver.ts';
import { timeIndexed } from '../plan/oracle/time-indexed.ts';
import { median, workMs } from './rounds.ts';

const CASES = 24;
const ALL = { enoughMs: Number.NEGATIVE_INFINITY, nodes: 100_000 };

type Taken = { readonly ms: number; readonly found: ExactOrder };

function ours(seed: number, count: number, rounds: number): Taken {
	const asked = clockCase(seed, count, seed % 2 === 0);
	const order = () => exactOrder(clockPieces(asked), ALL);
	const found = order();
	const ms = median(Array.from({ length: rounds * 5 }, () => workMs(order)));
	return { ms, found };
}

function againstSolver(count: number, rounds: number): string {
	const pairs = Array.from({ length: CASES }, (_, seed) => {
		const { ms, found } = ours(seed, count, rounds);
		const model = timeIndexed(clockCase(seed, count, seed % 2 === 0));
		let value = Number.NaN;
		const solverMs = workMs(() => {
			value = Math.round(optimumOf(model)?.value ?? Number.NaN);
		});
		if (value !== found.latenessMs) throw new Error(`case ${seed}: ${value}, ${found.latenessMs}`);
		return { ms, solverMs, ratio: solverMs / ms };
	});
	const ratios = pairs.map(({ ratio }) => ratio);
	return [
		row(`order of ${count} pieces of work, exact`, pairs),
		`HiGHS ${median(pairs.map(({ solverMs }) => solverMs)).toFixed(1)} ms`,
		`${median(ratios).toFixed(0)} times faster, at the least ${Math.min(...ratios).toFixed(0)}  (target >= 100)`,
	].join('  ');
}

function alone(count: number, rounds: number): string {
	const all = Array.from({ length: CASES * 4 }, (_, seed) => ours(seed, count, rounds));
	const nodes = Math.max(...all.map(({ found }) => found.nodes));
	const proved = all.filter(({ found }) => found.isProved).length;
	return `${row(`order of ${count} pieces of work, exact`, all)}  proved ${proved} of ${all.length}, ${nodes} nodes at most`;
}

function row(name: string, all: readonly { readonly ms: number }[]): string {
	const us = all.map(({ ms }) => ms * 1000);
	const figures = `${median(us).toFixed(1).padStart(6)} us, at most ${Math.max(...us).toFixed(0)}`;
	return `${name.padEnd(44)} ${figures}`;
}

export function benchPlanClock(rounds: number): readonly string[] {
	return [
		...[6, 9, 12].map((count) => againstSolver(count, rounds)),
		...[20, 40, 80].map((count) => alone(count, rounds)),
	];
}
