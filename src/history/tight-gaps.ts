// Which gaps between songs were tight: in the plan, and in truth.

import type { Gap, NightFacts } from './night-facts.ts';

/** Under this many seconds left a gap is tight, as the plan has it. */
const TIGHT_SECONDS = 5;

export type GapOfNight = Gap & {
	readonly night: string;
	readonly isTightInPlan: boolean;
	/** Null where the journal does not hold when the last hand-over was made. */
	readonly wasTight: boolean | null;
};

/**
 * Whether a gap was tight: in the plan, with under 5 s left once its hand-overs are made; in truth, with under 5 s from
 * the last one to the song, or with one that was late.
 */
function tightness({
	plannedSeconds,
	neededSeconds,
	leftSeconds,
	isLate,
}: Pick<Gap, 'plannedSeconds' | 'neededSeconds' | 'leftSeconds' | 'isLate'>): Pick<
	GapOfNight,
	'isTightInPlan' | 'wasTight'
> {
	return {
		isTightInPlan: plannedSeconds - neededSeconds < TIGHT_SECONDS,
		wasTight: isLate ? true : leftSeconds === null ? null : leftSeconds < TIGHT_SECONDS,
	};
}

/**
 * The gaps with hand-overs in them that were tight in the plan or in truth, night by night.
 *
 * @example
 * tightGaps([{ night: 'n', gaps: [{ handOvers: 1, plannedSeconds: 60, neededSeconds: 15, leftSeconds: 40, isLate: false }] }]) // => []
 */
export function tightGaps(
	nights: readonly Pick<NightFacts, 'night' | 'gaps'>[],
): readonly GapOfNight[] {
	return nights.flatMap(({ night, gaps }) =>
		gaps
			.filter(({ handOvers }) => handOvers > 0)
			.map((gap) => ({ ...gap, night, ...tightness(gap) }))
			.filter(({ isTightInPlan, wasTight }) => isTightInPlan || wasTight === true),
	);
}
