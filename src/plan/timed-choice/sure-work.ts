// How late the work is at least, whatever is chosen of what is still possible: a lower bound. Where a stint
// surely begins, the work for it is at least the least that any possible hand needs, from the soonest that
// the instrument can be back; early and last part apart, as if each could be put down for other work.

import type { Possible, SearchGraph } from '../choice/search-graph.ts';
import type { Seat } from '../choice/seats.ts';
import { BEGINS, type Steps } from '../choice/steps.ts';
import type { Hand } from '../demand/hand.ts';
import type { Section } from '../plan.ts';
import { busyWindows, freeClock } from '../schedule/free-clock.ts';
import { beginningMs } from '../schedule/hand-overs-ahead.ts';
import { jackson, startingAt } from '../schedule/one-machine.ts';
import { onFreeClock, type Piece } from '../schedule/order-work.ts';
import { type LeastWork, leastOf, Pasts } from './pasts.ts';

/**
 * Milliseconds by which the latest work is late at the least.
 *
 * @example
 * sureLatenessMs(graph, possible) // => 0
 */
export function sureLatenessMs(graph: SearchGraph, possible: Possible): number {
	const { outlook, seats, handOverSeconds } = graph.seating;
	const pasts = new Pasts(outlook);
	const pieces: Piece[] = [];
	const windows: { section: Section; wantedMs: number }[] = [];
	outlook.sections.forEach((section, place) => {
		pasts.reach(section);
		const sure = seats.flatMap((seat, index) => {
			const begun = handsThatBegin(graph, possible, { seat: index, section: place });
			return begun === null ? [] : [{ seat, begun }];
		});
		const seconds = sure.reduce((sum, { seat, begun }) => {
			const each = begun.map(
				(hand) => handOverSeconds[seat.instrumentOf[hand] as number] as number,
			);
			return sum + Math.min(...each);
		}, 0);
		const wantedMs = section.hasBegun ? outlook.nowMs : beginningMs(section, seconds);
		if (sure.length > 0) windows.push({ section, wantedMs });
		for (const { seat, begun } of sure) {
			let least: LeastWork | null = null;
			for (const hand of begun) {
				const one = pasts.leastWork(section, seat.hands[hand] as Hand);
				least = one && leastOf(least, one);
				if (least === null) break;
			}
			if (least !== null) pieces.push(...piecesOf(least, wantedMs));
		}
		pasts.take(seats.map((seat, index) => handsPossible(seat, possible[index], place)));
	});
	if (pieces.length === 0) return 0;
	const clock = freeClock(busyWindows(outlook.cues, windows));
	const waiting = onFreeClock(pieces, clock);
	const { latenessMs } = jackson(startingAt(clock.at(outlook.nowMs), waiting), {
		isPreemptive: true,
	});
	return Math.round(Math.max(0, latenessMs));
}

function piecesOf(
	{ firstSeconds, lastSeconds, firstFromMs, lastFromMs }: LeastWork,
	dueMs: number,
): readonly Piece[] {
	const last = { seconds: lastSeconds, releaseMs: lastFromMs, dueMs, isEarly: false };
	if (firstSeconds <= 0) return [last];
	const firstDueMs = dueMs - lastSeconds * 1000;
	return [
		{ seconds: firstSeconds, releaseMs: firstFromMs, dueMs: firstDueMs, isEarly: true },
		last,
	];
}

/** The hands that a seat may have in a section where every way there begins a stint; null where one does not. */
function handsThatBegin(
	{ steps, seating }: SearchGraph,
	possible: Possible,
	{ seat, section }: { readonly seat: number; readonly section: number },
): readonly number[] | null {
	const { first, to, flags, size } = steps[seat] as Steps;
	const { start } = seating.seats[seat] as Seat;
	const mine = possible[seat] as Uint8Array;
	const row = section * size;
	const begun: number[] = [];
	const isKnown = new Uint8Array(size);
	for (let before = 0; before < size; before += 1) {
		const isFrom = section === 0 ? before === start : mine[row - size + before] === 1;
		if (!isFrom) continue;
		const end = first[row + before + 1] as number;
		for (let step = first[row + before] as number; step < end; step += 1) {
			const hand = to[step] as number;
			if (mine[row + hand] === 0) continue;
			if (((flags[step] as number) & BEGINS) === 0) return null;
			if (isKnown[hand] === 0) begun.push(hand);
			isKnown[hand] = 1;
		}
	}
	return begun;
}

function handsPossible(
	{ hands }: Seat,
	mine: Uint8Array | undefined,
	section: number,
): readonly (Hand | null)[] {
	return hands.filter((_, hand) => mine?.[section * hands.length + hand] === 1);
}
