// The stints that begin whatever is chosen of what is still possible.

import type { Board } from './board.ts';
import { BEGINS } from './steps.ts';

/** A stint that surely begins in a section, with one of these hands. */
export type SureStint = { readonly seat: number; readonly hands: readonly number[] };

/**
 * For each section, the stints that surely begin there.
 *
 * @example
 * sureStints(board)[0] // => [{ seat: 0, hands: [2] }, { seat: 1, hands: [2] }]
 */
export function sureStints(board: Board): readonly (readonly SureStint[])[] {
	const { seats, sectionCount } = board.seating;
	const begun = seats.map((_, seat) => begunBy(board, seat));
	return Array.from({ length: sectionCount }, (_, section) => {
		const stints: SureStint[] = [];
		begun.forEach((hands, seat) => {
			const here = hands[section] ?? [];
			if (here.length > 0) stints.push({ seat, hands: here });
		});
		return stints;
	});
}

type Begun = readonly (readonly number[])[];

/** For each section, the hands of this seat's sure stint; they hold as long as the same is possible for it. */
function begunBy(board: Board, seat: number): Begun {
	const known = (board.kept.get('sure-stints') ?? new WeakMap()) as WeakMap<Uint8Array, Begun>;
	board.kept.set('sure-stints', known);
	const possible = board.possible[seat] as Uint8Array;
	const before = known.get(possible);
	if (before !== undefined) return before;
	const begun = Array.from({ length: board.seating.sectionCount }, (_, section) =>
		handsBegun(board, seat, section),
	);
	known.set(possible, begun);
	return begun;
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
