// The stints that begin whatever is chosen of what is still possible.

import type { Board } from './board.ts';
import { BEGINS } from './steps.ts';

/** A stint that surely begins in a section, with one of these hands. */
export type SureStint = {
	readonly seat: number;
	readonly hands: readonly number[];
	/** The instruments of these hands, each once. */
	readonly instruments: readonly number[];
};

/**
 * For each section, the stints that surely begin there.
 *
 * @example
 * sureStints(board)[0] // => [{ seat: 0, hands: [2], instruments: [0] }, { seat: 1, hands: [2], instruments: [4] }]
 */
export function sureStints(board: Board): readonly (readonly SureStint[])[] {
	const { seats, sectionCount } = board.seating;
	const all = seats.map((_, seat) => stintsOf(board, seat));
	return Array.from({ length: sectionCount }, (_, section) => {
		const here: SureStint[] = [];
		for (const mine of all) {
			const stint = mine[section];
			if (stint) here.push(stint);
		}
		return here;
	});
}

type OfSeat = readonly (SureStint | null)[];

/** This seat's, section by section; they hold as long as the same is possible for it. */
function stintsOf(board: Board, seat: number): OfSeat {
	const known = (board.kept.get('sure-stints') ?? new WeakMap()) as WeakMap<Uint8Array, OfSeat>;
	board.kept.set('sure-stints', known);
	const possible = board.possible[seat] as Uint8Array;
	const before = known.get(possible);
	if (before !== undefined) return before;
	const { sectionCount, seats } = board.seating;
	const stints = Array.from({ length: sectionCount }, (_, section) => {
		const hands = handsBegun(board, seat, section);
		if (hands.length === 0) return null;
		const instruments = new Set(hands.map((hand) => seats[seat]?.instrumentOf[hand] ?? -1));
		return { seat, hands, instruments: [...instruments] };
	});
	known.set(possible, stints);
	return stints;
}

/** Every hand with which this seat may go on there; none unless a stint begins with each of them. */
function handsBegun({ seating, steps, possible }: Board, place: number, section: number): number[] {
	const seat = seating.seats[place];
	const mine = steps[place];
	const open = possible[place];
	if (seat === undefined || mine === undefined || open === undefined) return [];
	const { first, to, flags } = mine;
	const row = section * seat.size;
	const hands: number[] = [];
	for (let before = 0; before < seat.size; before += 1) {
		const isFrom = section === 0 ? before === seat.start : open[row - seat.size + before] === 1;
		if (!isFrom) continue;
		const end = first[row + before + 1] ?? 0;
		for (let step = first[row + before] ?? 0; step < end; step += 1) {
			const hand = to[step] ?? 0;
			if (open[row + hand] !== 1) continue;
			if (((flags[step] ?? 0) & BEGINS) === 0) return [];
			if (!hands.includes(hand)) hands.push(hand);
		}
	}
	return hands;
}
