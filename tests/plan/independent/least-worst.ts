// One machine, release dates, due dates, no preemption, the least maximum lateness (1 | r_j | L_max), on a
// clock with busy windows cut out: Bratley's branching over active schedules, bounded by the preemptive
// earliest-due-date schedule. Lateness is measured on the wall, where windows count.

import type { WorkingClock } from './working-clock.ts';

/** Seconds: not to be begun before `from`, wanted at `wanted`. */
export type Job = { readonly from: number; readonly seconds: number; readonly wanted: number };

type Cut = { readonly release: number; readonly seconds: number; readonly wanted: number };

/** The least worst lateness over all orders, in seconds, below 0 when all ends early; -Infinity without jobs. */
export function leastWorst(jobs: readonly Job[], clock: WorkingClock, limit = Infinity): number {
	const cut = jobs
		.map((job): Cut => ({ release: clock.workedAt(job.from), ...pick(job) }))
		.sort((a, b) => a.wanted - b.wanted || a.release - b.release);
	const bound = preemptiveWorst(cut, -Infinity, clock);
	let best = greedyWorst(cut, clock);
	if (best <= bound || bound >= limit) return bound >= limit ? bound : best;
	const visit = (rest: readonly Cut[], free: number, worst: number): void => {
		if (worst >= best) return;
		if (rest.length === 0) {
			best = worst;
			return;
		}
		if (Math.max(worst, preemptiveWorst(rest, free, clock)) >= best) return;
		const earliestEnd = Math.min(...rest.map((job) => endOf(job, free)));
		for (const job of rest) {
			if (Math.max(free, job.release) >= earliestEnd && job.seconds > 0) continue;
			const end = endOf(job, free);
			const late = clock.momentAt(end) - job.wanted;
			visit(
				rest.filter((one) => one !== job),
				end,
				Math.max(worst, late),
			);
			if (best <= bound) return;
		}
	};
	visit(cut, -Infinity, -Infinity);
	return best;
}

/** The worst lateness when work may be broken off for other work: never more than without. */
export function preemptiveLeastWorst(jobs: readonly Job[], clock: WorkingClock): number {
	const cut = jobs
		.map((job): Cut => ({ release: clock.workedAt(job.from), ...pick(job) }))
		.sort((a, b) => a.wanted - b.wanted);
	return preemptiveWorst(cut, -Infinity, clock);
}

function pick({ seconds, wanted }: Job): Pick<Job, 'seconds' | 'wanted'> {
	return { seconds, wanted };
}

function endOf(job: Cut, free: number): number {
	return Math.max(free, job.release) + job.seconds;
}

/** Jobs stand by the time wanted: whichever is first in the list of those that may be worked on goes first. */
function preemptiveWorst(jobs: readonly Cut[], free: number, clock: WorkingClock): number {
	const left = jobs.map(({ seconds }) => seconds);
	const releases = [...new Set(jobs.map(({ release }) => Math.max(free, release)))].sort(
		(a, b) => a - b,
	);
	let worst = -Infinity;
	for (const [i, release] of releases.entries()) {
		const until = releases[i + 1] ?? Infinity;
		let now = release;
		for (const [j, job] of jobs.entries()) {
			if (now >= until) break;
			if (left[j]! < 0 || Math.max(free, job.release) > release) continue;
			const done = Math.min(left[j]!, until - now);
			now += done;
			left[j]! -= done;
			if (left[j]! > 0) break;
			left[j] = -1;
			worst = Math.max(worst, clock.momentAt(now) - job.wanted);
		}
	}
	return worst;
}

/** Of what may be begun, what is wanted first. */
function greedyWorst(jobs: readonly Cut[], clock: WorkingClock): number {
	const rest = [...jobs];
	let [free, worst] = [-Infinity, -Infinity];
	while (rest.length > 0) {
		const start = Math.max(free, Math.min(...rest.map(({ release }) => release)));
		const at = rest.findIndex(({ release }) => release <= start);
		const [job] = rest.splice(at, 1);
		free = endOf(job!, start);
		worst = Math.max(worst, clock.momentAt(free) - job!.wanted);
	}
	return worst;
}
