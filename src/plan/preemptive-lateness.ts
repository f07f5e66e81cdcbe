// How late the work is at least, in whatever order it is done: the least lateness if a piece might be put
// down for another. Earliest due first is then the best order (the rule of Horn for one machine,
// 1 | pmtn, r_j | L_max; from memory), also on a clock with holes in it, which delays all alike.

import type { NightMs } from '../journal/entry.ts';
import type { FreeClock } from './free-clock.ts';
import type { Piece } from './order-work.ts';

export type LeastLateness<P extends Piece> = {
	/** The worst finish less its due time; below 0 when all are early, `-Infinity` without any work. */
	readonly latenessMs: number;
	/** The pieces that alone make it so: they cannot all be done sooner, and none is due later. */
	readonly critical: readonly P[];
};

/**
 * The least lateness of these pieces from `nowMs` on.
 *
 * @example
 * preemptiveLateness([{ seconds: 6, releaseMs: 0, dueMs: 20000 }, { seconds: 2, releaseMs: 2000, dueMs: 5000 }, { seconds: 3, releaseMs: 4000, dueMs: 9000 }], { nowMs: 0, clock: freeClock([]) }).latenessMs // => -1000
 */
export function preemptiveLateness<P extends Piece>(
	pieces: readonly P[],
	{ nowMs, clock }: { readonly nowMs: NightMs; readonly clock: FreeClock },
): LeastLateness<P> {
	const now = clock.at(nowMs);
	const jobs = pieces
		.map((piece) => ({
			piece,
			due: piece.dueMs,
			release: Number.isFinite(piece.releaseMs) ? Math.max(clock.at(piece.releaseMs), now) : now,
			left: piece.seconds * 1000,
		}))
		.sort((one, other) => one.release - other.release);
	const runs: {
		readonly job: (typeof jobs)[number];
		readonly from: number;
		readonly to: number;
	}[] = [];
	const open: (typeof jobs)[number][] = [];
	let worst = { latenessMs: Number.NEGATIVE_INFINITY, run: -1 };
	let time = now;
	let next = 0;
	while (next < jobs.length || open.length > 0) {
		if (open.length === 0) time = Math.max(time, jobs[next]?.release ?? time);
		for (let job = jobs[next]; job !== undefined && job.release <= time; job = jobs[next]) {
			open.push(job);
			next += 1;
		}
		const job = open.reduce((first, one) => (one.due < first.due ? one : first));
		const untilNext = (jobs[next]?.release ?? Number.POSITIVE_INFINITY) - time;
		const span = Math.min(job.left, untilNext);
		runs.push({ job, from: time, to: time + span });
		time += span;
		job.left -= span;
		if (job.left > 0) continue;
		open.splice(open.indexOf(job), 1);
		const latenessMs = clock.firstMs(time) - job.due;
		if (latenessMs > worst.latenessMs) worst = { latenessMs, run: runs.length - 1 };
	}
	return { latenessMs: worst.latenessMs, critical: criticalUpTo(runs, worst.run) };
}

type Run<P> = {
	readonly job: { readonly piece: P; readonly due: number };
	readonly from: number;
	readonly to: number;
};

/** Back from the worst piece, as long as what was worked on is due no later and there was no idling. */
function criticalUpTo<P>(runs: readonly Run<P>[], last: number): readonly P[] {
	const due = runs[last]?.job.due ?? 0;
	const critical = new Set<P>();
	let since = runs[last]?.to ?? 0;
	for (let run = last; run >= 0; run -= 1) {
		const one = runs[run];
		if (one === undefined || one.job.due > due || one.to < since) break;
		critical.add(one.job.piece);
		since = one.from;
	}
	return [...critical];
}
