// What is asked, in the search for several players together, for having a shared instrument in a tuning
// in a section: whoever has it pays, and the instrument is paid for the one tuning that it is in. As an
// instrument is in one pair of hands and one tuning at a time, no choice comes to more by that than it
// costs; what players taken alone then come to is a bound for all of them together.

import type { Board } from './board.ts';
import type { GroupSetting } from './group-setting.ts';
import type { SeatWays } from './seat-ways.ts';
import type { Seat } from './seats.ts';

export type Prices = {
	/** For each instrument that several of the seats may have at any time, the first of its columns, one for each tuning; else -1. */
	readonly firstColumn: Int16Array;
	/** How many columns each of them has: one where its tuning is not followed. */
	readonly columnCounts: Int16Array;
	readonly columnCount: number;
	/** Packed costs: a row of columns for each section. */
	readonly of: Float64Array;
};

/**
 * Prices of nothing for all that these seats share.
 *
 * @example
 * noPrices(board, [0, 1], groupSetting(board, [0, 1])).columnCount // => 0
 */
export function noPrices(board: Board, members: readonly number[], setting: GroupSetting): Prices {
	const { instrumentCount, tuningCounts, sectionCount } = board.seating;
	const firstColumn = new Int16Array(instrumentCount).fill(-1);
	const columnCounts = new Int16Array(instrumentCount);
	let columnCount = 0;
	for (let instrument = 0; instrument < instrumentCount; instrument += 1) {
		const having = members.filter((seat) => mayEverHave(board, seat, instrument));
		if (having.length < 2) continue;
		firstColumn[instrument] = columnCount;
		columnCounts[instrument] =
			setting.isFollowed[instrument] === 1 ? (tuningCounts[instrument] ?? 1) : 1;
		columnCount += columnCounts[instrument] ?? 0;
	}
	const of = new Float64Array(sectionCount * columnCount);
	return { firstColumn, columnCounts, columnCount, of };
}

function mayEverHave({ seating, may }: Board, seat: number, instrument: number): boolean {
	const mine = may.bySeat[seat];
	for (let at = instrument; at < (mine?.length ?? 0); at += seating.instrumentCount) {
		if (mine?.[at] === 1) return true;
	}
	return false;
}

/**
 * For each place of a seat's ways where among the prices that of its hand stands; -1 for none.
 *
 * @example
 * cellsOf(seating.seats[0], ways, noPrices(board, [0], groupSetting(board, [0])))[0] // => -1
 */
export function cellsOf(seat: Seat, ways: SeatWays, prices: Prices): Int32Array {
	const cells = new Int32Array(ways.handOf.length).fill(-1);
	for (let section = 0; section + 1 < ways.firstPlace.length; section += 1) {
		const end = ways.firstPlace[section + 1] ?? 0;
		for (let place = ways.firstPlace[section] ?? 0; place < end; place += 1) {
			const hand = ways.handOf[place] ?? 0;
			const instrument = seat.instrumentOf[hand] ?? -1;
			const first = prices.firstColumn[instrument] ?? -1;
			if (first < 0 || (ways.ownOf[instrument] ?? -1) >= 0) continue;
			const isTold = (prices.columnCounts[instrument] ?? 0) > 1;
			cells[place] =
				section * prices.columnCount + first + (isTold ? (seat.tuningOf[hand] ?? 0) : 0);
		}
	}
	return cells;
}
