// What several players surely cost together beyond what each costs alone: hand-overs that share a gap
// whatever is chosen, and one instrument named for two.

import type { Board } from './board.ts';
import type { Weights } from './criteria.ts';
import { MISSING, OVER_GAP } from './criteria.ts';
import { countOverGap } from './fit.ts';
import { BEGINS } from './steps.ts';

type SurelyTogether = {
	/** For each section, hand-overs too many. */
	readonly overGap: Uint8Array;
	/** For each section, slots that stay empty. */
	readonly missing: Uint8Array;
};

/**
 * The least that these seats must cost more than the sum of each alone, where nothing is asked of who
 * leaves a slot empty in a section in which one has to.
 *
 * @example
 * surelyTogether(board, [0, 1]).missing // => new Uint8Array(3)
 */
export function surelyTogether(board: Board, seats: readonly number[]): SurelyTogether {
	const { sectionCount, gapSeconds } = board.seating;
	const overGap = new Uint8Array(sectionCount);
	const missing = new Uint8Array(sectionCount);
	// One has nothing to share, and is asked for at every turn.
	if (seats.length < 2) return { overGap, missing };
	for (let section = 0; section < sectionCount; section += 1) {
		const gap = gapSeconds[section] ?? 0;
		if (Number.isFinite(gap)) {
			const seconds = seats.flatMap((seat) => sureSeconds(board, { seat, section, gap }));
			overGap[section] = countOverGap(seconds, gap);
		}
		missing[section] = namedTooOften(board, seats, section);
	}
	return { overGap, missing };
}

/**
 * For each section, what it and those after it surely cost these seats beyond what each costs alone, packed.
 *
 * @example
 * surelyLater(board, [0, 1], { of: [4, 2, 0, 0, 0, 0, 0], isWhole: true }).length // => 4
 */
export function surelyLater(board: Board, seats: readonly number[], { of }: Weights): Float64Array {
	const { sectionCount } = board.seating;
	const later = new Float64Array(sectionCount + 1);
	const sure = surelyTogether(board, seats);
	for (let section = sectionCount - 1; section >= 0; section -= 1) {
		later[section] =
			(later[section + 1] ?? 0) +
			(sure.overGap[section] ?? 0) * (of[OVER_GAP] ?? 0) +
			(sure.missing[section] ?? 0) * (of[MISSING] ?? 0);
	}
	return later;
}

type At = { readonly seat: number; readonly section: number; readonly gap: number };

/**
 * The shortest hand-over that this seat surely has there; none where it may have none, or one that does
 * not fit even alone, which is counted for the seat itself.
 */
function sureSeconds({ seating, steps, possible }: Board, at: At): readonly number[] {
	const seat = seating.seats[at.seat];
	const mine = steps[at.seat];
	const open = possible[at.seat];
	if (seat === undefined || mine === undefined || open === undefined) return [];
	const row = at.section * seat.size;
	let least = Number.POSITIVE_INFINITY;
	for (let hand = 0; hand < seat.size; hand += 1) {
		const isFrom = at.section === 0 ? hand === seat.start : open[row - seat.size + hand] === 1;
		if (!isFrom) continue;
		const end = mine.first[row + hand + 1] ?? 0;
		for (let step = mine.first[row + hand] ?? 0; step < end; step += 1) {
			const to = mine.to[step] ?? 0;
			if (open[row + to] === 0) continue;
			if (((mine.flags[step] ?? 0) & BEGINS) === 0) return [];
			const seconds = seating.handOverSeconds[seat.instrumentOf[to] ?? 0] ?? 0;
			if (seconds > at.gap) return [];
			least = Math.min(least, seconds);
		}
	}
	return Number.isFinite(least) ? [least] : [];
}

function namedTooOften(
	{ seating, possible }: Board,
	seats: readonly number[],
	section: number,
): number {
	const named = seats.flatMap((place) => {
		const seat = seating.seats[place];
		const [hand] = seat?.optionHands[section] ?? [];
		const ask = seat?.asks[section];
		const isNamed = ask?.demand.kind === 'named' && !ask.isOfEmptyHands;
		if (seat === undefined || hand === undefined || !isNamed) return [];
		return possible[place]?.[section * seat.size + hand] === 1 ? [seat.instrumentOf[hand]] : [];
	});
	return named.length - new Set(named).size;
}
