// The planner against a general solver on the same shows in the same run, and how long whole plans and
// plans made again take.

import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { toldEntries } from '../../src/plan/demand/told.ts';
import { makePlan } from '../../src/plan/make-plan.ts';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { readyAtZero } from '../../src/plan/timed-choice/before-doors.ts';
import { playedThrough } from '../../src/plan/what-if/played-through.ts';
import { sessionAfter } from '../../src/plan/what-if/what-if.ts';
import { applyAll } from '../../src/session/apply.ts';
import type { Command } from '../../src/session/command.ts';
import type { Show } from '../../src/showfile/show.ts';
import { chosenFor, figuresOf } from '../plan/chosen-for.ts';
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
/** Of so many shows of a size the solver finds the best too: BENCH_SOLVED=20 takes the better part of an hour. */
const SOLVED = Number(process.env.BENCH_SOLVED ?? 3);
/** Seconds that the solver gets for each of its four steps; what it does not end in them counts as so long. */
const LIMIT = Number(process.env.BENCH_LIMIT ?? 20);
/** Shows beyond this many songs, or half open beyond so many, are left to the planner alone. */
const MOST_SONGS = 40;
const MOST_OPEN_SONGS = Number(process.env.BENCH_OPEN ?? 20);
const BUDGET = 800_000;
/** A break and an audible are tried in every so many songs of a night. */
const EVERY = 4;

export function* benchPlan(): Generator<string> {
	for (const named of [0.85, 0.5]) {
		for (const [songs, players] of SIZES) {
			const shows = Array.from({ length: SHOWS }, (_, seed) =>
				chanceShow(seed, evening(songs, players, named)),
			);
			const name = `${songs} songs, ${players} players, ${named * 100} % named`;
			const isSolved = songs <= (named > 0.5 ? MOST_SONGS : MOST_OPEN_SONGS);
			yield choosingRow(name, shows, isSolved ? SOLVED : 0);
			yield planRow(name, shows);
			yield againRow(name, shows);
		}
	}
	yield slopeRow();
	yield memoryRow();
}

function choose(show: Show) {
	return chosenFor(show, BUDGET);
}

function choosingRow(name: string, shows: readonly Show[], solvedCount: number): string {
	for (const show of shows) choose(show);
	let proved = 0;
	let equal = 0;
	let ended = 0;
	const ours: number[] = [];
	const ratios: number[] = [];
	for (const [place, show] of shows.entries()) {
		let chosen = choose(show);
		const work = (): void => {
			chosen = choose(show);
		};
		// The solver's code is long compiled when it gets there; ours is while it runs for the first times.
		const ms = median(Array.from({ length: 5 }, () => workMs(work)));
		ours.push(ms);
		if (chosen.isProved) proved += 1;
		if (place >= solvedCount) continue;
		let solved: readonly number[] | null = null;
		const theirs = workMs(() => {
			solved = solveChoice(show, LIMIT);
		});
		ratios.push(theirs / ms);
		if (solved === null) continue;
		ended += 1;
		if (figuresOf(chosen.chosen.counts).join() === String(solved)) equal += 1;
	}
	const against =
		ratios.length > 0
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

/** After a break, and after an audible, all through nights that go as planned. */
function againRow(name: string, shows: readonly Show[]): string {
	let proved = 0;
	const ours = shows.flatMap((show) => {
		const reached = playedThrough(readyAtZero(show), planBeforeDoors(show));
		return reached.flatMap(({ section, session }, place) => {
			if (place % EVERY !== 0) return [];
			const moment = { session, nowMs: section.startMs + 60_000, plannedZeroMs: 0 };
			const held = Object.values(session.players).find(({ holds }) => holds !== null)?.holds;
			const song = reached[place + 3]?.section.song;
			const changes: readonly (Command | null)[] = [
				held ? { do: 'report-break', instrument: held } : null,
				song === undefined ? null : { do: 'choose-next', song },
			];
			const told = applyAll(session, toldEntries(moment, makePlan(moment)));
			return changes.flatMap((change) => {
				const after = change && sessionAfter({ ...moment, session: told }, [change]);
				if (after === null) return [];
				let isProved = false;
				const work = (): void => {
					({ isProved } = makePlan({ ...moment, session: after }));
				};
				const ms = median([1, 2, 3].map(() => workMs(work)));
				if (isProved) proved += 1;
				return [ms];
			});
		});
	});
	return `${name}: plan again after a break or an audible ${times(ours)}, proved ${proved} of ${ours.length}  (target median <= 5 ms, worst <= 20)`;
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

/** What a process takes at the most that plans, over one that only reads the same shows. */
function memoryRow(): string {
	const file = join(import.meta.dirname, 'plan-memory.ts');
	const [without = 0, planned = 0] = ['read', 'plan'].map((what) => {
		const { stdout } = spawnSync(process.execPath, [file, what], { encoding: 'utf8' });
		return Number(stdout) / 1024;
	});
	return `memory of planning 40 songs, 3 players, typical and half open: ${(planned - without).toFixed(0)} MB over ${without.toFixed(0)} MB  (target <= 100)`;
}

function times(ms: readonly number[]): string {
	return `${median(ms).toFixed(2)} ms median, ${Math.max(...ms).toFixed(1)} worst`;
}
