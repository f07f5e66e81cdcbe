// What every search for the same players goes by, whatever else has been said: weights, what each step
// costs by itself, whose tunings are followed, and the pool of labels.

import type { Board } from './board.ts';
import type { Counts, Weights } from './criteria.ts';
import { PREFERENCE, TIE, weightsFor } from './criteria.ts';
import type { LabelPool } from './label-pool.ts';
import { labelPool } from './label-pool.ts';
import { UNTOLD } from './seats.ts';
import type { Steps } from './steps.ts';
import { BEGINS, COUNTS, IS_CHANGED, IS_MISSING } from './steps.ts';

/** What stays the same in every search for the same seats. */
export type GroupSetting = {
	readonly weights: Weights;
	/** For each of these seats, what each step costs by itself, packed. */
	readonly stepCosts: readonly Float64Array[];
	/** For each instrument 1 where its tuning is followed: it matters, and nobody else can change it. */
	readonly isFollowed: Uint8Array;
	/** For each section and instrument, how many others may have it. */
	readonly outsiders: Uint8Array;
	readonly pool: LabelPool;
	/** What was worked out roughly for a seat alone, by the list of what is possible for it; kept by those who make it. */
	readonly known: WeakMap<Uint8Array, unknown>;
};

/**
 * The setting of these seats, made once for a board and all that come after it.
 *
 * @example
 * groupSetting(board, [0, 1]).isFollowed[0] // => 0
 */
export function groupSetting(board: Board, members: readonly number[]): GroupSetting {
	const { seating, may, steps, kept } = board;
	const key = members.join(' ');
	const known = kept.get(key) as GroupSetting | undefined;
	if (known !== undefined) return known;
	const weights = weightsFor(mostOf(board, members));
	const outsiders = may.count.slice();
	const own = new Uint8Array(seating.instrumentCount);
	for (const seat of members) {
		const mine = may.bySeat[seat] ?? new Uint8Array();
		const ever = new Uint8Array(seating.instrumentCount);
		mine.forEach((is, at) => {
			outsiders[at] = (outsiders[at] ?? 0) - is;
			if (is === 1) ever[at % seating.instrumentCount] = 1;
		});
		ever.forEach((is, instrument) => {
			own[instrument] = (own[instrument] ?? 0) + is;
		});
	}
	const isFollowed = own.map((count, instrument) => {
		const isAllOurs = count > 0 && count === may.players[instrument];
		return isAllOurs && (seating.tuningCounts[instrument] ?? 0) > 1 ? 1 : 0;
	});
	const setting: GroupSetting = {
		weights,
		stepCosts: members.map((seat) => packedSteps(steps[seat] as Steps, weights)),
		isFollowed,
		outsiders,
		pool: labelPool(members.length, members.length === 1 ? 8 : 14),
		known: new WeakMap(),
	};
	kept.set(key, setting);
	return setting;
}

function packedSteps({ flags, preference, tie }: Steps, { of }: Weights): Float64Array {
	const [missing = 0, , changed = 0, handOvers = 0] = of;
	return Float64Array.from(
		flags,
		(flag, step) =>
			((flag & IS_MISSING) === 0 ? 0 : missing) +
			((flag & IS_CHANGED) === 0 ? 0 : changed) +
			((flag & COUNTS) === 0 ? 0 : handOvers) +
			(preference[step] ?? 0) * (of[PREFERENCE] ?? 0) +
			(tie[step] ?? 0) * (of[TIE] ?? 0),
	);
}

/** The most that each count can come to for these seats. */
function mostOf({ seating, steps }: Board, members: readonly number[]): Counts {
	const most = [0, 0, 0, 0, 0, 0, 0];
	for (const member of members) {
		const seat = seating.seats[member];
		const mine = steps[member];
		if (seat === undefined || mine === undefined) continue;
		for (let section = 0; section < seating.sectionCount; section += 1) {
			const from = mine.first[section * seat.size] ?? 0;
			const end = mine.first[(section + 1) * seat.size] ?? 0;
			let flags = 0;
			let preference = 0;
			let tie = 0;
			for (let step = from; step < end; step += 1) {
				flags |= mine.flags[step] ?? 0;
				preference = Math.max(preference, mine.preference[step] ?? 0);
				tie = Math.max(tie, mine.tie[step] ?? 0);
			}
			const hasGap = Number.isFinite(seating.gapSeconds[section]);
			const counts = [
				(flags & IS_MISSING) !== 0,
				(flags & BEGINS) !== 0 && hasGap,
				(flags & IS_CHANGED) !== 0 && (seat.told[section] ?? UNTOLD) !== UNTOLD,
				(flags & COUNTS) !== 0,
				(flags & BEGINS) !== 0,
			];
			counts.forEach((is, place) => {
				most[place] = (most[place] ?? 0) + (is ? 1 : 0);
			});
			most[PREFERENCE] = (most[PREFERENCE] ?? 0) + preference;
			most[TIE] = (most[TIE] ?? 0) + tie;
		}
	}
	return most;
}
