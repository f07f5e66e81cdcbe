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
	return narrowed({ seating, steps, possible: all }, wholly(seating, all.keys()));
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
	const struck: Struck = new Map([[seat, { first: section, last: section }]]);
	return narrowed({ ...open, possible: open.possible.with(seat, mine) }, struck);
}

type Open = {
	readonly seating: Seating;
	readonly steps: readonly Steps[];
	readonly possible: Possible;
};

/** The seats of which something was struck out, each with the first and the last section where. */
type Struck = Map<number, Span>;
type Span = { readonly first: number; readonly last: number };

function wholly({ sectionCount }: Seating, seats: Iterable<number>): Struck {
	return new Map(Array.from(seats, (seat) => [seat, { first: 0, last: sectionCount - 1 }]));
}

/** The lists of those that were struck are written over. */
function narrowed({ seating, steps, possible }: Open, struck: Struck): Possible | null {
	const lists = [...possible];
	const own = new Set(struck.keys());
	// Each round strikes out more; two are nearly always enough, and fewer strikes are never wrong.
	for (let round = 0; struck.size > 0; round += 1) {
		const spans: Struck = new Map();
		for (const [place, span] of struck) {
			const more = strike({ seat: seating.seats[place], steps: steps[place] }, lists[place], span);
			if (more === null) return null;
			spans.set(place, more);
		}
		struck.clear();
		if (round === 4) break;
		for (const [place, span] of spans) {
			strikeWhatIsIn(seating, lists, { place, span, own, struck });
		}
	}
	return lists;
}

/**
 * Strikes out what no way from the first section to the last leads through, where all ways did before
 * something was struck out in this span. The span in which something is struck out then; null when
 * nothing is left.
 */
function strike(
	{ seat, steps }: { readonly seat: Seat | undefined; readonly steps: Steps | undefined },
	mine: Uint8Array | undefined,
	{ first, last }: Span,
): Span | null {
	if (seat === undefined || steps === undefined || mine === undefined) return null;
	const { size } = seat;
	const sectionCount = mine.length / size;
	const reached = new Uint8Array(size);
	let [earliest, latest] = [first, last];
	for (let section = first; section < sectionCount; section += 1) {
		const row = section * size;
		reached.fill(0);
		for (let hand = 0; hand < size; hand += 1) {
			const isFrom = section === 0 ? hand === seat.start : mine[row - size + hand] === 1;
			if (!isFrom) continue;
			const end = steps.first[row + hand + 1] ?? 0;
			for (let step = steps.first[row + hand] ?? 0; step < end; step += 1) {
				reached[steps.to[step] ?? 0] = 1;
			}
		}
		let isLess = false;
		for (let hand = 0; hand < size; hand += 1) {
			if (mine[row + hand] === 0 || reached[hand] === 1) continue;
			mine[row + hand] = 0;
			isLess = true;
		}
		if (isLess) latest = Math.max(latest, section);
		// From here on everything is reached that was.
		if (!isLess && section > last) break;
	}
	for (let section = last; section > 0; section -= 1) {
		const row = section * size;
		let isLess = false;
		for (let hand = 0; hand < size; hand += 1) {
			if (mine[row - size + hand] === 0) continue;
			const end = steps.first[row + hand + 1] ?? 0;
			let step = steps.first[row + hand] ?? 0;
			while (step < end && mine[row + (steps.to[step] ?? 0)] === 0) step += 1;
			if (step < end) continue;
			mine[row - size + hand] = 0;
			isLess = true;
		}
		if (isLess) earliest = Math.min(earliest, section - 1);
		// Before here everything leads on that did.
		if (!isLess && section <= first) break;
	}
	const isNothingLeft = sectionCount > 0 && !mine.subarray(0, size).includes(1);
	return isNothingLeft ? null : { first: earliest, last: latest };
}

type SureAsked = {
	readonly place: number;
	readonly span: Span;
	/** Whose lists are not anybody else's. */
	readonly own: Set<number>;
	readonly struck: Struck;
};

/** Strikes out, of each instrument that is surely in this player's hands in the span, all that others would do with it. */
function strikeWhatIsIn(
	{ seats }: Seating,
	possible: Uint8Array[],
	{ place, span, own, struck }: SureAsked,
): void {
	for (let section = span.first; section <= span.last; section += 1) {
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
				struck.set(other, spanWith(struck.get(other), section));
				theirs[at] = 0;
				possible[other] = theirs;
			}
		}
	}
}

function spanWith(span: Span | undefined, section: number): Span {
	const { first, last } = span ?? { first: section, last: section };
	return { first: Math.min(first, section), last: Math.max(last, section) };
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
