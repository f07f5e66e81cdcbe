// How late the work is at least, whatever is chosen of what is still possible: a lower bound. Where a stint
// surely begins, the work for it is at least the least that any possible hand needs, from the soonest that
// the instrument can be back; early and last part apart, as if each could be put down for other work.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { NightMs } from '../../journal/entry.ts';
import { recheckSeconds } from '../../session/readiness.ts';
import type { Instrument } from '../../showfile/show.ts';
import type { Possible, SearchGraph } from '../choice/search-graph.ts';
import type { Seat } from '../choice/seats.ts';
import { BEGINS, type Steps } from '../choice/steps.ts';
import type { Hand } from '../demand/hand.ts';
import { instrumentById } from '../demand/instrument-by-id.ts';
import type { Outlook } from '../demand/outlook.ts';
import type { Section } from '../plan.ts';
import { busyWindows, freeClock } from '../schedule/free-clock.ts';
import { beginningMs } from '../schedule/hand-overs-ahead.ts';
import { jackson, startingAt } from '../schedule/one-machine.ts';
import { onFreeClock, type Piece } from '../schedule/order-work.ts';
import { BACK_MS, backAtOnceMs, handedAhead, releasedAhead } from '../schedule/stints.ts';
import { isDoneAlready, type WorkNeeded, workNeeded } from '../schedule/work-needed.ts';

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

/** The least work that a stint asks for, what is done early and what is to be fresh apart. */
type LeastWork = {
	readonly firstSeconds: number;
	readonly lastSeconds: number;
	/** Not to be begun before; `-Infinity` where nothing holds it back. */
	readonly firstFromMs: NightMs;
	readonly lastFromMs: NightMs;
};

/** By the hand that an instrument was in last, when it is back at the soonest; null for none since now. */
type Past = Map<Hand | null, NightMs>;

/**
 * What may have become of each instrument by a section, when not all is chosen yet: in which tuning and with which
 * capo it may come back, and how soon; at first as the first section comes.
 */
class Pasts {
	readonly #outlook: Outlook;
	readonly #onRack = new Map<string, Past>();
	/** All hands that somebody may have an instrument in now. */
	#inHands = new Map<string, Set<Hand>>();

	constructor(outlook: Outlook) {
		this.#outlook = outlook;
		const { show, instruments, heldBefore, hands } = outlook;
		const putDown = new Set([...heldBefore.values()].map(({ instrument }) => instrument));
		for (const { id } of show.instruments) {
			const backAtMs = putDown.has(id) ? (instruments[id]?.context.backAtMs ?? null) : null;
			const backMs = backAtMs === null ? Number.NEGATIVE_INFINITY : backAtMs + BACK_MS;
			this.#onRack.set(id, new Map([[null, backMs]]));
		}
		this.take([...hands.values()].map((hand) => [hand]));
	}

	/** What was in hands may be back for this section. */
	reach(section: Section): void {
		const atOnceMs = backAtOnceMs(section);
		const backMs = section.isAfterInterval ? atOnceMs : Math.min(section.startMs, atOnceMs);
		for (const [instrument, hands] of this.#inHands) {
			const past = this.#onRack.get(instrument) as Past;
			for (const hand of hands) past.set(hand, Math.min(past.get(hand) ?? backMs, backMs));
		}
	}

	/** From here on each player has one of these in hands. */
	take(possible: readonly (readonly (Hand | null)[])[]): void {
		this.#inHands = new Map();
		for (const hands of possible) {
			const [first] = hands;
			const isSure = hands.every((hand) => hand !== null && hand.instrument === first?.instrument);
			if (isSure && first) this.#onRack.get(first.instrument)?.clear();
			for (const hand of hands) {
				if (hand === null) continue;
				const known = this.#inHands.get(hand.instrument) ?? new Set();
				this.#inHands.set(hand.instrument, known.add(hand));
			}
		}
	}

	/** The least work before this hand is given for the section; null where there may be none to do. */
	leastWork(section: Section, to: Hand): LeastWork | null {
		const { show, nowMs, instruments } = this.#outlook;
		const instrument = instrumentById(show).get(to.instrument);
		const state = instruments[to.instrument];
		if (instrument === undefined || state === undefined) return null;
		const { stringHours, stringsDown } = state.context;
		const recheck = Math.max(
			recheckSeconds(show, instrument, stringsDown.length > 0 ? 0 : stringHours),
			recheckSeconds(show, instrument, null),
		);
		const freshFromMs = section.startMs - recheck * 1000;
		const handedMs = section.hasBegun ? Math.max(section.startMs, nowMs) : section.startMs;
		let least: LeastWork | null = null;
		for (const [hand, backMs] of this.#onRack.get(to.instrument) as Past) {
			const when = { atMs: handedMs, recheckSeconds: recheck };
			if (hand === null && isDoneAlready({ instrument, state, to }, when)) return null;
			const needed = workFrom({ instrument, state, hand }, to);
			const firstSeconds = needed.seconds - needed.lastSeconds;
			const firstMs = firstSeconds * 1000;
			const earlyMs = needed.hasEarlyPart ? backMs : Math.max(backMs, freshFromMs - firstMs);
			least = leastOf(least, {
				firstSeconds,
				lastSeconds: needed.lastSeconds,
				firstFromMs: earlyMs,
				lastFromMs: Math.max(freshFromMs, backMs + firstMs),
			});
		}
		return least;
	}
}

/** Part by part the less of two; the one that there is. */
function leastOf(one: LeastWork | null, other: LeastWork): LeastWork {
	if (one === null) return other;
	return {
		firstSeconds: Math.min(one.firstSeconds, other.firstSeconds),
		lastSeconds: Math.min(one.lastSeconds, other.lastSeconds),
		firstFromMs: Math.min(one.firstFromMs, other.firstFromMs),
		lastFromMs: Math.min(one.lastFromMs, other.lastFromMs),
	};
}

type From = {
	readonly instrument: Instrument;
	readonly state: InstrumentState;
	readonly hand: Hand | null;
};

function workFrom({ instrument, state, hand }: From, to: Hand): WorkNeeded {
	const used = hand === null ? state : releasedAhead(handedAhead(state, hand, 0), 0);
	return workNeeded({ instrument, state: used, to });
}
