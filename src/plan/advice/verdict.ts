// Whether a night works, from its plan before the doors: where it is tightest, or what is wrong with it and
// what would mend that.

import { tenths } from '../../base/show-clock.ts';
import type { Show } from '../../showfile/show.ts';
import type { Later, Plan } from '../plan.ts';
import { curfewWarnings } from '../what-if/curfew-warnings.ts';
import { byPlayer } from '../what-if/later-cost.ts';
import type { Mend } from './mend.ts';
import { isWorking, shortfallOf } from './shortfall.ts';
import { type TightPlace, tightPlaces } from './tight-places.ts';

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
	const missing = plan.slots.filter(({ isMissing }) => isMissing);
	const short = tightPlaces(plan).filter(({ spareSeconds }) => spareSeconds < 0);
	const [gaps, late] = [
		short.filter(({ work }) => work === null),
		short.filter(({ work }) => work !== null),
	];
	return [
		...byPlayer(show, 'missing', missing),
		...gaps.slice(0, 1).map(({ section, handOvers, spareSeconds }): Wrong => {
			const { song, gapSeconds } = section;
			const gap = { handOvers, gapSeconds: gapSeconds ?? 0, overSeconds: tenths(-spareSeconds) };
			return { code: 'over-gap', song, ...gap, more: gaps.length - 1 };
		}),
		...late.slice(0, 1).map(({ section: { song }, work, spareSeconds }): Wrong => {
			const about = { song, instrument: work?.instrument ?? '' };
			const shortSeconds = tenths(-spareSeconds);
			return { code: 'late', ...about, shortSeconds, more: late.length - 1 };
		}),
		...curfewWarnings(show, plan.sections, 0),
	];
}
