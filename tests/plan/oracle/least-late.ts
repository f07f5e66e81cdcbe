// The least lateness of a few pieces of work for one pair of hands, by trying every set of pieces as the
// first ones done: exact, and only for few.

export type Chore = {
	readonly instrument: string;
	readonly seconds: number;
	readonly fromSeconds: number;
	readonly wantedSeconds: number;
};

/** Hands are not free from the first up to the second of these. */
export type Busy = readonly (readonly [number, number])[];

/** When so many seconds of work begun at `start` are done, hands taken away in between; windows in order. */
export function doneAt(start: number, seconds: number, busy: Busy): number {
	let time = start;
	let left = seconds;
	for (const [from, until] of busy) {
		if (until <= time) continue;
		const free = Math.max(0, from - time);
		if (left <= free) return time + left;
		left -= free;
		time = Math.max(time, until);
	}
	return time + left;
}

/** Seconds by which the worst is late at best, 0 when all can be on time. Whole seconds only; windows in order. */
export function leastLate(chores: readonly Chore[], busy: Busy): number {
	if (chores.length > 14) throw new Error('too many for trying every set');
	const byWanted = [...chores].sort((one, other) => one.wantedSeconds - other.wantedSeconds);
	let time = Number.NEGATIVE_INFINITY;
	let high = 0;
	for (const { seconds, fromSeconds, wantedSeconds } of byWanted) {
		time = doneAt(Math.max(time, fromSeconds), seconds, busy);
		high = Math.max(high, time - wantedSeconds);
	}
	// Each alone, however much there is to do beside it.
	let low = Math.max(
		0,
		...chores.map((one) => doneAt(one.fromSeconds, one.seconds, busy) - one.wantedSeconds),
	);
	while (low < high) {
		const middle = Math.floor((low + high) / 2);
		if (isFeasible(byWanted, busy, middle)) high = middle;
		else low = middle + 1;
	}
	return low;
}

function isFeasible(chores: readonly Chore[], busy: Busy, late: number): boolean {
	// For each set of pieces, the earliest moment at which all of it can be done, each by its time.
	const earliest = new Float64Array(1 << chores.length).fill(Number.POSITIVE_INFINITY);
	earliest[0] = Number.NEGATIVE_INFINITY;
	for (let set = 0; set < earliest.length; set += 1) {
		if (earliest[set] === Number.POSITIVE_INFINITY) continue;
		for (const [index, { seconds, fromSeconds, wantedSeconds }] of chores.entries()) {
			const next = set | (1 << index);
			if (next === set) continue;
			const done = doneAt(Math.max(earliest[set]!, fromSeconds), seconds, busy);
			if (done <= wantedSeconds + late) earliest[next] = Math.min(earliest[next]!, done);
		}
	}
	return earliest.at(-1)! < Number.POSITIVE_INFINITY;
}
