// What may have become of each instrument by a section, when not all is chosen yet: in which tuning and with
// which capo it may come back, and how soon. The least work for a hand goes by the best of these.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { NightMs } from '../../journal/entry.ts';
import { recheckSeconds } from '../../session/readiness.ts';
import type { Instrument } from '../../showfile/show.ts';
import type { Hand } from '../demand/hand.ts';
import { instrumentById } from '../demand/instrument-by-id.ts';
import type { Outlook } from '../demand/outlook.ts';
import type { Section } from '../plan.ts';
import { BACK_MS, backAtOnceMs, handedAhead, releasedAhead } from '../schedule/stints.ts';
import { isDoneAlready, type WorkNeeded, workNeeded } from '../schedule/work-needed.ts';

/** The least work that a stint asks for, what is done early and what is to be fresh apart. */
export type LeastWork = {
	readonly firstSeconds: number;
	readonly lastSeconds: number;
	/** Not to be begun before; `-Infinity` where nothing holds it back. */
	readonly firstFromMs: NightMs;
	readonly lastFromMs: NightMs;
};

/** By the hand that an instrument was in last, when it is back at the soonest; null for none since now. */
type Past = Map<Hand | null, NightMs>;

/**
 * The pasts as the first section comes.
 *
 * @example
 * new Pasts(outlook).leastWork(plan.sections[0], handA1) // => null
 */
export class Pasts {
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

/**
 * Part by part the less of two; the one that there is.
 *
 * @example
 * leastOf(null, { firstSeconds: 15, lastSeconds: 45, firstFromMs: 0, lastFromMs: 0 }).firstSeconds // => 15
 */
export function leastOf(one: LeastWork | null, other: LeastWork): LeastWork {
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
