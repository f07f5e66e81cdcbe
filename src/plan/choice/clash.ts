// Where choices that were made for some players apart cannot stand side by side, or cost more together.

import { countOverGap } from '../schedule/fit.ts';
import { type Hands, type Move, moveOf } from './moves.ts';
import type { SearchGraph } from './search-graph.ts';
import type { Seat } from './seats.ts';
import { BEGINS, IS_FIRM, IS_GIVEN_UP, IS_MISSING } from './steps.ts';

export type Chosen = {
	readonly hands: Hands;
	/** For each seat, the number of the group that it was chosen with. */
	readonly groups: readonly number[];
	/** Which group's count holds the re-tunings of an instrument; -1 for none. */
	readonly countedIn: (instrument: number) => number;
};

/**
 * The groups that must be chosen for together because of the first clash there is: an instrument in two
 * hands, somebody who does without though nobody else has it, hand-overs that share a gap, an instrument
 * re-tuned for one because of another. Empty when nothing clashes.
 *
 * @example
 * firstClash(graph, { hands, groups: [0, 1, 2], countedIn: () => 0 }) // => []
 */
export function firstClash(graph: SearchGraph, chosen: Chosen): readonly number[] {
	const { seating } = graph;
	const tunings = new Int16Array(seating.instrumentCount);
	const holder = new Int16Array(seating.instrumentCount);
	for (let section = 0; section < seating.sectionCount; section += 1) {
		holder.fill(-1);
		const moves = seating.seats.map((_, seat) => moveOf(graph, chosen.hands, { seat, section }));
		const clash =
			inTwoHands(moves, holder) ??
			doingWithout(graph, { moves, holder, section }) ??
			overGap(graph, { moves, section }, chosen) ??
			retuned(graph, { moves, tunings }, chosen);
		const groups = new Set(clash?.map((seat) => chosen.groups[seat] as number));
		if (groups.size > 1) return [...groups].sort((one, other) => one - other);
	}
	return [];
}

function inTwoHands(moves: readonly Move[], holder: Int16Array): readonly number[] | undefined {
	let clash: readonly number[] | undefined;
	for (const { seat, instrument } of moves) {
		if (instrument < 0) continue;
		const other = holder[instrument] as number;
		if (other >= 0) clash ??= [other, seat];
		holder[instrument] = seat;
	}
	return clash;
}

type At = {
	readonly moves: readonly Move[];
	readonly holder: Int16Array;
	readonly section: number;
};

function doingWithout({ seating }: SearchGraph, at: At): readonly number[] | undefined {
	const { moves, holder, section } = at;
	const isElsewhere = (instrument: number, seat: number, isFirm: boolean): boolean => {
		const other = holder[instrument] as number;
		if (other < 0 || other === seat) return false;
		return !isFirm || ((moves[other]?.flags as number) & IS_FIRM) !== 0;
	};
	for (const { seat, flags, takenBy } of moves) {
		const one = seating.seats[seat] as Seat;
		const { primary, others } = one.slots[section] as Seat['slots'][number];
		const isMissing = (flags & IS_MISSING) !== 0;
		const isGivenUp = (flags & IS_GIVEN_UP) !== 0;
		const firmly = [
			isGivenUp ? -1 : takenBy,
			isMissing && primary >= 0 ? (one.instrumentOf[primary] as number) : -1,
		];
		const free =
			firmly.find((instrument) => instrument >= 0 && !isElsewhere(instrument, seat, true)) ??
			(isMissing
				? [...others]
						.map((hand) => one.instrumentOf[hand] as number)
						.concat(isGivenUp ? takenBy : [])
						.find((instrument) => !isElsewhere(instrument, seat, false))
				: undefined);
		if (free !== undefined) return [seat, ...whoMayHave(seating.seats, free)];
	}
	return undefined;
}

function whoMayHave(seats: readonly Seat[], instrument: number): readonly number[] {
	return seats.flatMap((seat, place) => (seat.instrumentOf.includes(instrument) ? [place] : []));
}

function overGap(
	{ seating }: SearchGraph,
	{ moves, section }: { readonly moves: readonly Move[]; readonly section: number },
	{ groups }: Chosen,
): readonly number[] | undefined {
	const gap = seating.gapSeconds[section] as number;
	const given = moves.filter(({ flags }) => (flags & BEGINS) !== 0);
	if (!Number.isFinite(gap) || given.length < 2) return undefined;
	const secondsOf = (some: readonly Move[]): number[] =>
		some.map(({ instrument }) => seating.handOverSeconds[instrument] as number);
	const apart = [...new Set(groups)].map((group) =>
		countOverGap(secondsOf(given.filter(({ seat }) => groups[seat] === group)), gap),
	);
	const isMore = countOverGap(secondsOf(given), gap) > apart.reduce((sum, one) => sum + one, 0);
	return isMore ? given.map(({ seat }) => seat) : undefined;
}

/** A re-tuning that no group has counted brings all together who may have that instrument. */
function retuned(
	{ seating }: SearchGraph,
	at: { readonly moves: readonly Move[]; readonly tunings: Int16Array },
	{ groups, countedIn }: Chosen,
): readonly number[] | undefined {
	let clash: readonly number[] | undefined;
	for (const { seat, hand, flags, instrument } of at.moves) {
		if ((flags & BEGINS) === 0) continue;
		const tuning = seating.seats[seat]?.tuningOf[hand] as number;
		const isRetuned = at.tunings[instrument] !== tuning;
		at.tunings[instrument] = tuning;
		if (!isRetuned || clash !== undefined) continue;
		const others = whoMayHave(seating.seats, instrument);
		const isFollowed = others.every((other) => groups[other] === groups[seat]);
		if (!isFollowed && countedIn(instrument) !== groups[seat]) clash = others;
	}
	return clash;
}
