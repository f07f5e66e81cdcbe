// Whether a night works, from its plan before the doors: where it is tightest, or what is wrong with it and
// what would mend that.

import { tenths } from '../../base/show-clock.ts';
import type { Show } from '../../showfile/show.ts';
import type { Later, Plan } from '../plan.ts';
import { byPlayer } from '../what-if/later-cost.ts';
import type { Mend } from './mend.ts';
import { isWorking, shortfallOf } from './shortfall.ts';
import type { TightPlace } from './tight-places.ts';
import { tightPlaces } from './tight-places.ts';

export type Verdict =
	/** `tightest`: null where nothing is to be done between songs; `alike`: how many more are as tight. */
	| { readonly works: true; readonly tightest: TightPlace | null; readonly alike: number }
	/** `mend`: null where nothing was tried. */
	| { readonly works: false; readonly wrong: readonly Wrong[]; readonly mend: Mend | null };

/** What does not fit; of gaps and of late work the worst one, and how many more there are. */
export type Wrong =
	| Extract<Later, { code: 'missing' | 'backup' | 'short-curfew' }>
	| {
			readonly code: 'over-gap';
			readonly song: string;
			readonly handOvers: number;
			readonly gapSeconds: number;
			readonly overSeconds: number;
			readonly more: number;
	  }
	| {
			readonly code: 'late';
			readonly song: string;
			readonly instrument: string;
			/** As `Work` has it. */
			readonly shortSeconds: number;
			readonly more: number;
	  };

/**
 * Of a plan made before the doors.
 *
 * @example
 * verdict(show, { plan: beforeDoors, mend: null }).alike // => 1
 */
export function verdict(
	show: Show,
	{ plan, mend }: { readonly plan: Plan; readonly mend: Mend | null },
): Verdict {
	if (!isWorking(shortfallOf(show, plan)))
		return { works: false, wrong: wrongOf(show, plan), mend };
	const places = tightPlaces(plan);
	const [tightest = null] = places;
	const alike = places.filter(({ spareSeconds }) => spareSeconds === tightest?.spareSeconds).length;
	return { works: true, tightest, alike: Math.max(0, alike - 1) };
}

function wrongOf(show: Show, plan: Plan): readonly Wrong[] {
	const [late, ...lateMore] = plan.work
		.filter(({ slackSeconds }) => slackSeconds < 0)
		.sort((one, other) => one.slackSeconds - other.slackSeconds);
	const [tight, ...tightMore] = tightPlaces(plan).filter(
		({ work, spareSeconds }) => !work && spareSeconds < 0,
	);
	const { pastCurfew } = shortfallOf(show, plan);
	const missing = plan.slots.filter(({ isMissing }) => isMissing);
	return [
		...byPlayer(show, 'missing', missing),
		...(tight === undefined
			? []
			: [
					{
						code: 'over-gap' as const,
						song: tight.section.song,
						handOvers: tight.handOvers,
						gapSeconds: tight.section.gapSeconds ?? 0,
						overSeconds: tenths(-tight.spareSeconds),
						more: tightMore.length,
					},
				]),
		...(late === undefined
			? []
			: [
					{
						code: 'late' as const,
						song: late.section.song,
						instrument: late.instrument,
						shortSeconds: tenths(late.shortSeconds),
						more: lateMore.length,
					},
				]),
		...(pastCurfew > 0 ? [{ code: 'short-curfew' as const, overSeconds: tenths(pastCurfew) }] : []),
	];
}
