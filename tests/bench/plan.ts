// The planner against a general solver on the same shows in the same run, and how long whole plans and
// plans made again take.

import type { Entry } from '../../src/journal/entry.ts';
import { boardOf } from '../../src/plan/board.ts';
import { chooseHands } from '../../src/plan/choose-hands.ts';
import { makePlan } from '../../src/plan/make-plan.ts';
import { outlookOf } from '../../src/plan/outlook.ts';
import { planBeforeDoors, readyAtZero } from '../../src/plan/plan-before-doors.ts';
import { seatingOf } from '../../src/plan/seats.ts';
import { toldEntries } from '../../src/plan/told.ts';
import { apply } from '../../src/session/apply.ts';
import { decide } from '../../src/session/decide.ts';
import type { Session } from '../../src/session/session.ts';
import type { Show } from '../../src/showfile/show.ts';
import { chanceShow, evening } from '../plan/oracle/chance-show.ts';
import { solveChoice } from '../plan/oracle/solve-choice.ts';
import { median, workMs } from './rounds.ts';

const SIZES = [
	[10, 1],
	[20, 2],
	[40, 3],
	[80, 4],
] as const;
const SHOWS = Number(process.env.BENCH_SHOWS ?? 20);
/** Seconds that the solver gets for each of its three steps; what it does not end in them counts as so long. */
const LIMIT = Number(process.env.BENCH_LIMIT ?? 60);
/** Shows beyond this many songs are left to the planner alone. */
const MOST_SOLVED = Number(process.env.BENCH_SOLVED ?? 40);
const BUDGET = 800_000;

export function* benchPlan(): Generator<string> {
	for (const named of [0.85, 0.5]) {
		for (const [songs, players] of SIZES) {
			const shows = Array.from({ length: SHOWS }, (_, seed) =>
				chanceShow(seed, evening(songs, players, named)),
			);
			const name = `${songs} songs, ${players} players, ${named * 100} % named`;
			yield choosingRow(name, shows, songs <= MOST_SOLVED);
			yield planRow(name, shows);
			yield againRow(name, shows);
		}
	}
	yield slopeRow();
}

function choose(show: Show) {
	const session = readyAtZero(show);
	const outlook = outlookOf({ session, nowMs: -3_600_000, plannedZeroMs: 0 });
	return chooseHands(boardOf(seatingOf(outlook, null)), { left: BUDGET })!;
}

function choosingRow(name: string, shows: readonly Show[], isSolved: boolean): string {
	for (const show of shows) choose(show);
	let proved = 0;
	let equal = 0;
	let ended = 0;
	const ours: number[] = [];
	const ratios: number[] = [];
	for (const show of shows) {
		let chosen = choose(show);
		const ms = workMs(() => {
			chosen = choose(show);
		});
		ours.push(ms);
		if (chosen.counts.every((count, place) => count === chosen.bound[place])) proved += 1;
		if (!isSolved) continue;
		let solved: readonly number[] | null = null;
		const theirs = workMs(() => {
			solved = solveChoice(show, LIMIT);
		});
		ratios.push(theirs / ms);
		if (solved === null) continue;
		ended += 1;
		const [missing, overGap, , handOvers, retunings, preference] = chosen.counts;
		if ([missing, overGap, handOvers, retunings, preference].join() === String(solved)) equal += 1;
	}
	const against = isSolved
		? `, solver ${median(ratios).toFixed(0)} x as long (least ${Math.min(...ratios).toFixed(0)}), equal ${equal} of ${ended} it ended`
		: '';
	return `${name}: choosing ${times(ours)}, proved ${proved} of ${shows.length}${against}`;
}

function planRow(name: string, shows: readonly Show[]): string {
	let proved = 0;
	const ours = shows.map((show) =>
		workMs(() => {
			if (planBeforeDoors(show).isProved) proved += 1;
		}),
	);
	return `${name}: whole plan ${times(ours)}, proved ${proved} of ${shows.length}  (target <= 300 ms)`;
}

/** After a break in the middle of a night that goes as planned. */
function againRow(name: string, shows: readonly Show[]): string {
	const ours = shows.flatMap((show) => {
		let session = readyAtZero(show);
		let nowMs = 0;
		for (let step = 0; step < 9; step += 1) {
			const { plan } = { plan: makePlan({ session, nowMs, plannedZeroMs: 0 }) };
			const next = plan.sections.find(({ hasBegun }) => !hasBegun);
			const handOvers = plan.handOvers.filter(({ section }) => section === next);
			session = after(session, { do: 'step', handOvers }, nowMs);
			nowMs += step % 2 === 0 ? 200_000 : 30_000;
		}
		const before = makePlan({ session, nowMs, plannedZeroMs: 0 });
		const held = Object.values(session.players).find(({ holds }) => holds !== null)?.holds;
		if (!held) return [];
		session = toldEntries({ session, nowMs }, before).reduce(apply, session);
		session = after(session, { do: 'report-break', instrument: held }, nowMs);
		return [workMs(() => makePlan({ session, nowMs, plannedZeroMs: 0 }))];
	});
	return `${name}: plan again after a break ${times(ours)}  (target median <= 5 ms, worst <= 20)`;
}

function after(session: Session, command: Parameters<typeof decide>[1], nowMs: number): Session {
	const decision = decide(session, command, nowMs);
	return decision.ok ? (decision.entries as readonly Entry[]).reduce(apply, session) : session;
}

/** Where nobody shares anything: how the time grows with songs × instruments × players, as an exponent. */
function slopeRow(): string {
	const points = [10, 20, 40, 80].flatMap((songs) =>
		[1, 2, 4].map((players) => {
			const shows = Array.from({ length: 5 }, (_, seed) =>
				chanceShow(seed, { ...evening(songs, players, 0.85), shared: 0 }),
			);
			for (const show of shows) choose(show);
			const ms = median(shows.map((show) => workMs(() => choose(show))));
			return { x: Math.log(songs * 4 * players * players), y: Math.log(ms) };
		}),
	);
	const mean = (of: (point: (typeof points)[number]) => number): number =>
		points.reduce((sum, point) => sum + of(point), 0) / points.length;
	const [x, y] = [mean((point) => point.x), mean((point) => point.y)];
	const slope =
		mean((point) => (point.x - x) * (point.y - y)) / mean((point) => (point.x - x) ** 2);
	return `nothing shared: time grows as (songs x instruments x players) to the ${slope.toFixed(2)}  (target <= 1)`;
}

function times(ms: readonly number[]): string {
	return `${median(ms).toFixed(2)} ms median, ${Math.max(...ms).toFixed(1)} worst`;
}
