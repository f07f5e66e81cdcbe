// Where choices that were made for some players apart cannot stand side by side, or cost more together.

import type { Board } from './board.ts';
import { countOverGap } from './fit.ts';
import { BEGINS, IS_MISSING } from './steps.ts';

/** A choice for all: for each seat, the hand in each section. */
export type Hands = readonly Int16Array[];

/** For each seat, the number of the group that it was chosen with. */
export type Groups = Int16Array;

/**
 * The groups that must be chosen for together because of the first clash there is: an instrument in two
 * hands, a slot that is empty though something is free, hand-overs that share a gap, an instrument
 * re-tuned for one because of another. Empty when nothing clashes.
 *
 * @example
 * firstClash(board, chosen.hands, Int16Array.of(0, 1, 2)) // => []
 */
export function firstClash(board: Board, hands: Hands, groups: Groups): readonly number[] {
	const { seating } = board;
	const tuningNow = new Int16Array(seating.instrumentCount);
	const holder = new Int16Array(seating.instrumentCount);
	for (let section = 0; section < seating.sectionCount; section += 1) {
		holder.fill(-1);
		const moves = seating.seats.map((_, seat) => moveOf(board, hands, { seat, section }));
		const [inTwoHands] = moves.flatMap(({ seat, instrument }) => {
			if (instrument < 0) return [];
			const other = holder[instrument] ?? -1;
			holder[instrument] = seat;
			return other < 0 ? [] : [[other, seat]];
		});
		const clash =
			inTwoHands ??
			wronglyMissing(board, { moves, holder, section }) ??
			overGap(board, { moves, section }, groups) ??
			retuned(board, { moves, section, tuningNow }, groups);
		const clashing = new Set(clash?.map((seat) => groups[seat] ?? 0));
		if (clashing.size > 1) return [...clashing].sort((one, other) => one - other);
	}
	return [];
}

type Move = {
	readonly seat: number;
	readonly before: number;
	readonly hand: number;
	readonly flags: number;
	/** In hands from here on; -1 for none. */
	readonly instrument: number;
};

function moveOf(
	{ seating, steps }: Board,
	hands: Hands,
	{ seat, section }: { readonly seat: number; readonly section: number },
): Move {
	const one = seating.seats[seat];
	const before = (section === 0 ? one?.start : hands[seat]?.[section - 1]) ?? 0;
	const hand = hands[seat]?.[section] ?? 0;
	return {
		seat,
		before,
		hand,
		flags: stepFlags(steps[seat], section * (one?.size ?? 0) + before, hand),
		instrument: one?.instrumentOf[hand] ?? -1,
	};
}

function stepFlags(steps: Board['steps'][number] | undefined, from: number, hand: number): number {
	const end = steps?.first[from + 1] ?? 0;
	for (let step = steps?.first[from] ?? 0; step < end; step += 1) {
		if (steps?.to[step] === hand) return steps.flags[step] ?? 0;
	}
	throw new Error('hands that no step leads to');
}

function wronglyMissing(
	{ seating, may }: Board,
	{ moves, holder, section }: { moves: readonly Move[]; holder: Int16Array; section: number },
): readonly number[] | undefined {
	for (const { seat, before, flags } of moves) {
		if ((flags & IS_MISSING) === 0) continue;
		const one = seating.seats[seat];
		const broken = one?.wholeOf[before] === before ? -1 : (one?.instrumentOf[before] ?? -1);
		for (const option of one?.optionHands[section] ?? []) {
			const instrument = one?.instrumentOf[option] ?? -1;
			const isFree = (holder[instrument] ?? -1) < 0 || holder[instrument] === seat;
			if (!isFree || instrument === broken) continue;
			const at = section * seating.instrumentCount + instrument;
			return [seat, ...seatsWhere(may.bySeat, at)];
		}
	}
	return undefined;
}

function seatsWhere(bySeat: readonly Uint8Array[], at: number): readonly number[] {
	return bySeat.flatMap((mine, seat) => (mine[at] === 1 ? [seat] : []));
}

function overGap(
	{ seating }: Board,
	{ moves, section }: { moves: readonly Move[]; section: number },
	groups: Groups,
): readonly number[] | undefined {
	const gap = seating.gapSeconds[section] ?? 0;
	const given = moves.filter(({ flags }) => (flags & BEGINS) !== 0);
	if (!Number.isFinite(gap) || given.length < 2) return undefined;
	const secondsOf = (some: readonly Move[]): number[] =>
		some.map(({ instrument }) => seating.handOverSeconds[instrument] ?? 0);
	const together = countOverGap(secondsOf(given), gap);
	const apart = [...new Set(groups)].map((group) =>
		countOverGap(secondsOf(given.filter(({ seat }) => groups[seat] === group)), gap),
	);
	const isMore = together > apart.reduce((sum, one) => sum + one, 0);
	return isMore ? given.map(({ seat }) => seat) : undefined;
}

/** Follows the tunings; a re-tuning that was counted for nobody brings all together who may have that one. */
function retuned(
	{ seating, may, isSure }: Board,
	at: { moves: readonly Move[]; section: number; tuningNow: Int16Array },
	groups: Groups,
): readonly number[] | undefined {
	let clash: readonly number[] | undefined;
	for (const { seat, before, hand, flags, instrument } of at.moves) {
		if ((flags & BEGINS) === 0) continue;
		const one = seating.seats[seat];
		const tuning = one?.tuningOf[hand] ?? 0;
		const isRetuned = at.tuningNow[instrument] !== tuning;
		at.tuningNow[instrument] = tuning;
		if (!isRetuned || clash !== undefined) continue;
		const others = seating.seats.flatMap((_, other) =>
			mayEverHold(may.bySeat[other], instrument, seating.instrumentCount) ? [other] : [],
		);
		const isFollowed = others.every((other) => groups[other] === groups[seat]);
		const isCounted =
			isFollowed ||
			(one?.instrumentOf[before] === instrument
				? one.tuningOf[before] !== tuning
				: isSure(at.section, instrument, tuning));
		if (!isCounted) clash = others;
	}
	return clash;
}

function mayEverHold(mine: Uint8Array | undefined, instrument: number, count: number): boolean {
	for (let at = instrument; at < (mine?.length ?? 0); at += count)
		if (mine?.[at] === 1) return true;
	return false;
}
