// Which hands are possible for each player in each section, once it is said of some slots what must or
// must not be in them: what no step reaches, what leads nowhere, and what is surely in somebody else's
// hands is struck out.

import type { Seat, Seating } from './seats.ts';
import type { Steps } from './steps.ts';

/** Said of one slot: one of these hands, or any but these. */
export type Said = {
	readonly seat: number;
	readonly section: number;
	readonly hands: readonly number[];
	readonly isIt: boolean;
};

/** For each seat 1 where a hand is possible: section by section, hand by hand. */
export type Possible = readonly Uint8Array[];

/**
 * All that is possible; null where somebody is left without any way through.
 *
 * @example
 * possibleHands(seating, steps)[0].length // => 12
 */
export function possibleHands(seating: Seating, steps: readonly Steps[]): Possible | null {
	const { seats, sectionCount } = seating;
	const all = seats.map(({ size }) => new Uint8Array(sectionCount * size).fill(1));
	return narrowed({ seating, steps, possible: all }, new Set(all.keys()));
}

/**
 * What of it is still possible once something is said; null where that leaves nothing. Of seats that
 * nothing changes for, the very same list.
 *
 * @example
 * possibleAfter({ seating, steps, possible }, { seat: 0, section: 0, hands: [0], isIt: true }) // => null
 */
export function possibleAfter(open: Open, { seat, section, hands, isIt }: Said): Possible | null {
	const size = open.seating.seats[seat]?.size ?? 0;
	const mine = open.possible[seat]?.slice() ?? new Uint8Array();
	const row = mine.subarray(section * size, (section + 1) * size);
	for (let hand = 0; hand < size; hand += 1) {
		if (hands.includes(hand) !== isIt) row[hand] = 0;
	}
	return narrowed({ ...open, possible: open.possible.with(seat, mine) }, new Set([seat]));
}

/**
 * What is possible once the lists of these seats were made narrower; those lists are written over.
 *
 * @example
 * possibleIn({ seating, steps, possible }, []).length // => 3
 */
export function possibleIn(open: Open, seats: readonly number[]): Possible | null {
	return narrowed(open, new Set(seats));
}

type Open = {
	readonly seating: Seating;
	readonly steps: readonly Steps[];
	readonly possible: Possible;
};

/** `touched`: the seats of which something was struck out; their lists are written over. */
function narrowed({ seating, steps, possible }: Open, touched: Set<number>): Possible | null {
	const lists = [...possible];
	const own = new Set(touched);
	// Each round strikes out more; two are nearly always enough, and fewer strikes are never wrong.
	for (let round = 0; touched.size > 0; round += 1) {
		for (const place of touched) {
			if (!strike(seating.seats[place], steps[place], lists[place])) return null;
		}
		touched.clear();
		if (round < 4) strikeWhatOthersHave(seating, lists, { own, touched });
	}
	return lists;
}

/** Strikes out what no way from the first section to the last leads through; false when none is left. */
function strike(
	seat: Seat | undefined,
	steps: Steps | undefined,
	mine: Uint8Array | undefined,
): boolean {
	if (seat === undefined || steps === undefined || mine === undefined) return false;
	const { size } = seat;
	const sectionCount = mine.length / size;
	const { first, to } = steps;
	let before = new Uint8Array(size);
	before[seat.start] = 1;
	for (let section = 0; section < sectionCount; section += 1) {
		const row = section * size;
		const reached = new Uint8Array(size);
		for (let hand = 0; hand < size; hand += 1) {
			if (before[hand] === 0) continue;
			const end = first[row + hand + 1] ?? 0;
			for (let step = first[row + hand] ?? 0; step < end; step += 1) {
				const next = to[step] ?? 0;
				if (mine[row + next] === 1) reached[next] = 1;
			}
		}
		mine.set(reached, row);
		before = reached;
	}
	for (let section = sectionCount - 1; section > 0; section -= 1) {
		const row = section * size;
		for (let hand = 0; hand < size; hand += 1) {
			if (mine[row - size + hand] === 0) continue;
			const end = first[row + hand + 1] ?? 0;
			let leads = 0;
			for (let step = first[row + hand] ?? 0; step < end && leads === 0; step += 1) {
				leads = mine[row + (to[step] ?? 0)] ?? 0;
			}
			mine[row - size + hand] = leads;
		}
	}
	return sectionCount === 0 || mine.subarray(0, size).includes(1);
}

/** Strikes out, of each instrument that is surely in one player's hands, all that others would do with it. */
function strikeWhatOthersHave(
	{ seats, sectionCount }: Seating,
	possible: Uint8Array[],
	{ own, touched }: { readonly own: Set<number>; readonly touched: Set<number> },
): void {
	for (let section = 0; section < sectionCount; section += 1) {
		for (let place = 0; place < seats.length; place += 1) {
			const sure = sureInstrument(seats[place], possible[place], section);
			if (sure < 0) continue;
			for (let other = 0; other < seats.length; other += 1) {
				const seat = seats[other];
				let theirs = possible[other];
				if (other === place || seat === undefined || theirs === undefined) continue;
				for (let hand = 0; hand < seat.size; hand += 1) {
					const at = section * seat.size + hand;
					if (seat.instrumentOf[hand] !== sure || theirs[at] === 0) continue;
					if (!own.has(other)) theirs = theirs.slice();
					own.add(other);
					touched.add(other);
					theirs[at] = 0;
					possible[other] = theirs;
				}
			}
		}
	}
}

/** The instrument that is in these hands whatever is chosen; -1 where that is open. */
function sureInstrument(
	seat: Seating['seats'][number] | undefined,
	mine: Uint8Array | undefined,
	section: number,
): number {
	if (seat === undefined || mine === undefined) return -1;
	let sure = -2;
	for (let hand = 0; hand < seat.size; hand += 1) {
		if (mine[section * seat.size + hand] !== 1) continue;
		const instrument = seat.instrumentOf[hand] ?? -1;
		if (sure !== -2 && sure !== instrument) return -1;
		sure = instrument;
	}
	return sure;
}

/**
 * The only hand that is possible for a seat in a section; -1 where there are several.
 *
 * @example
 * onlyHand(seating, possible, { seat: 0, section: 0 }) // => 2
 */
export function onlyHand(
	{ seats }: Seating,
	possible: Possible,
	{ seat, section }: { readonly seat: number; readonly section: number },
): number {
	const size = seats[seat]?.size ?? 0;
	const row = possible[seat]?.subarray(section * size, (section + 1) * size);
	const hand = row?.indexOf(1) ?? -1;
	return hand >= 0 && row?.indexOf(1, hand + 1) === -1 ? hand : -1;
}
