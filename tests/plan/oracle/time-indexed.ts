// The least lateness from a solver for linear programs in whole numbers: a yes or no for each chore and
// each free second at which it could begin. The usual time-indexed model; it shares nothing with ours.

import type { ClockCase } from './clock-case.ts';
import { freeSeconds, latenessOf } from './clock-case.ts';
import { optimumOf } from './solver.ts';

/** The model in the solver's language. */
export function timeIndexed(asked: ClockCase): string {
	const { chores } = asked;
	const free = freeSeconds(asked);
	// Nothing has to be later than the worst is by due times: fewer starts, the same optimum.
	const byWanted = [...chores.keys()].sort((a, b) => chores[a]!.wanted - chores[b]!.wanted);
	const most = latenessOf(asked, byWanted, free);
	const starts = chores.map(({ from, seconds, wanted }) =>
		[...free.keys()].filter(
			(at) => free[at]! >= from && (free[at + seconds - 1] ?? Number.NaN) + 1 - wanted <= most,
		),
	);
	const name = (chore: number, at: number): string => `x${chore}_${at}`;
	const lines = ['Minimize', ' obj: late', 'Subject To'];
	chores.forEach(({ seconds, wanted }, chore) => {
		const mine = starts[chore]!;
		lines.push(` once${chore}: ${mine.map((at) => name(chore, at)).join(' + ')} = 1`);
		const ends = mine.map((at) => {
			const late = free[at + seconds - 1]! + 1 - wanted;
			return `${late < 0 ? '-' : '+'} ${Math.abs(late)} ${name(chore, at)}`;
		});
		lines.push(` late${chore}: ${ends.join(' ')} - late <= 0`);
	});
	for (const second of free.keys()) {
		const going = chores.flatMap(({ seconds }, chore) =>
			starts[chore]!.filter((at) => at <= second && second < at + seconds).map((at) =>
				name(chore, at),
			),
		);
		if (going.length > 1) lines.push(` hands${second}: ${going.join(' + ')} <= 1`);
	}
	lines.push('Bounds', ' late free', 'Binaries');
	starts.forEach((mine, chore) => {
		lines.push(...mine.map((at) => ` ${name(chore, at)}`));
	});
	return [...lines, 'End'].join('\n');
}

/** The least lateness in seconds. */
export function leastBySolver(asked: ClockCase): number {
	return Math.round(optimumOf(timeIndexed(asked))?.value ?? Number.NaN);
}
