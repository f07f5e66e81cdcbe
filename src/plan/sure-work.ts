// How late the work is at least under everything that is still possible: only hand-overs that are made
// whatever is chosen, only work that they surely need. What is not sure counts for nothing.

import type { InstrumentState } from '../../machines/instrument.ts';
import type { NightMs } from '../journal/entry.ts';
import { staleAfterSeconds } from '../session/readiness.ts';
import type { Session } from '../session/session.ts';
import type { Instrument, Show } from '../showfile/show.ts';
import { handedAhead, releasedAhead } from './ahead-state.ts';
import type { Board } from './board.ts';
import { busyWindows } from './busy-windows.ts';
import { freeClock } from './free-clock.ts';
import { beginningMs } from './hand-overs-ahead.ts';
import type { Piece } from './order-work.ts';
import type { Outlook } from './outlook.ts';
import type { Section } from './plan.ts';
import { onlyHand } from './possible-hands.ts';
import { preemptiveLateness } from './preemptive-lateness.ts';
import type { OpenWithCapo } from './same-pitches.ts';
import { BEGINS } from './steps.ts';
import { BACK_MS } from './stints.ts';
import { isDoneAlready, workNeeded } from './work-needed.ts';

/**
 * The least lateness in milliseconds, 0 when everything may fit.
 *
 * @example
 * sureLateness({ session, outlook }, board) // => 0
 */
export function sureLateness(
	{ session, outlook }: { readonly session: Session; readonly outlook: Outlook },
	board: Board,
): number {
	const given = sureGifts(outlook, board);
	const handOvers = outlook.sections.flatMap((section, place) => {
		const seconds = given
			.filter((one) => one.place === place)
			.reduce((sum, { instrument }) => sum + instrument.times.handOver, 0);
		return seconds === 0 ? [] : [{ section, wantedMs: beginningMs(section, seconds) }];
	});
	const clock = freeClock(busyWindows(session, outlook.sections, handOvers));
	const wanted = new Map(handOvers.map(({ section, wantedMs }) => [section, wantedMs]));
	const pieces = surePieces(outlook, board, { given, wanted });
	return Math.max(0, preemptiveLateness(pieces, { nowMs: outlook.nowMs, clock }).latenessMs);
}

/** A stint that surely begins. */
type Gift = {
	readonly seat: number;
	readonly place: number;
	readonly instrument: Instrument;
	readonly to: OpenWithCapo;
};

function sureGifts({ show, sections }: Outlook, board: Board): readonly Gift[] {
	const { seating, steps, possible } = board;
	return sections.flatMap((_, place) =>
		seating.seats.flatMap((one, seat): readonly Gift[] => {
			const hand = onlyHand(seating, possible, { seat, section: place });
			const instrument = show.instruments[one.instrumentOf[hand] ?? -1];
			const mine = steps[seat];
			if (hand < 0 || instrument === undefined || mine === undefined) return [];
			const row = place * one.size;
			for (let before = 0; before < one.size; before += 1) {
				const isFrom =
					place === 0 ? before === one.start : possible[seat]?.[row - one.size + before] === 1;
				const end = mine.first[row + before + 1] ?? 0;
				for (let step = mine.first[row + before] ?? 0; isFrom && step < end; step += 1) {
					const isOther = mine.to[step] !== hand || ((mine.flags[step] ?? 0) & BEGINS) !== 0;
					if (!isOther) return [];
				}
			}
			const option = one.asks[place]?.options[one.optionHands[place]?.indexOf(hand) ?? -1];
			return option === undefined ? [] : [{ seat, place, instrument, to: option.hand }];
		}),
	);
}

/** What is known of an instrument on the way through the sections. */
type Known = {
	/** As it is; null where somebody may have had it, or changed it, and nobody must. */
	readonly state: InstrumentState | null;
	readonly isInHands: boolean;
	/** It has surely been played since now. */
	readonly isUsed: boolean;
	/** Not on the rack again before. */
	readonly backMs: NightMs;
};

type Sure = {
	readonly given: readonly Gift[];
	readonly wanted: ReadonlyMap<Section, NightMs>;
};

function surePieces(outlook: Outlook, board: Board, { given, wanted }: Sure): readonly Piece[] {
	const { show, sections } = outlook;
	const pieces: Piece[] = [];
	show.instruments.forEach((instrument, index) => {
		let known = knownNow(outlook, instrument.id);
		sections.forEach((section, place) => {
			const gift = given.find((one) => one.place === place && one.instrument === instrument);
			const { some, every, capo } = holdersAt(board, index, place);
			if (known.isInHands && (gift !== undefined || !every)) known = released(known, section);
			if (gift !== undefined) {
				const dueMs = wanted.get(section) ?? beginningMs(section, instrument.times.handOver);
				const piece = pieceFor(outlook, known, { gift, section, dueMs });
				if (piece !== null) pieces.push(piece);
				known = handed(known, outlook.instruments[instrument.id], { gift, section });
			} else if (known.isInHands && capo !== null) known = withCapo(known, capo);
			else if (some) {
				known = { ...known, state: null, isInHands: every, isUsed: known.isUsed || every };
			}
		});
	});
	return pieces;
}

function knownNow({ instruments, hands, heldBefore }: Outlook, id: string): Known {
	const state = instruments[id] ?? null;
	const isInHands = [...hands.values()].some((hand) => hand?.instrument === id);
	const isPutDown = [...heldBefore.values()].some(({ instrument }) => instrument === id);
	const cameBackMs = isPutDown ? (state?.context.backAtMs ?? null) : null;
	return {
		state,
		isInHands,
		isUsed: isInHands,
		backMs: cameBackMs === null ? Number.NEGATIVE_INFINITY : cameBackMs + BACK_MS,
	};
}

type Holders = {
	/** Somebody may have it there. */
	readonly some: boolean;
	/** One player surely has. */
	readonly every: boolean;
	/** The capo with which it surely stays in the same hands, in the same tuning; null where that is not sure. */
	readonly capo: number | null;
};

function holdersAt({ seating, possible }: Board, instrument: number, place: number): Holders {
	let some = false;
	let every = false;
	let capo: number | null = null;
	seating.seats.forEach((one, seat) => {
		let has = false;
		let hasOther = false;
		for (let hand = 0; hand < one.size; hand += 1) {
			if (possible[seat]?.[place * one.size + hand] !== 1) continue;
			if (one.instrumentOf[hand] === instrument) has = true;
			else hasOther = true;
		}
		some ||= has;
		if (!has || hasOther) return;
		every = true;
		const hand = onlyHand(seating, possible, { seat, section: place });
		const before =
			place === 0 ? one.start : onlyHand(seating, possible, { seat, section: place - 1 });
		const isSame = hand >= 0 && before >= 0 && one.instrumentOf[before] === instrument;
		if (isSame && one.tuningOf[before] === one.tuningOf[hand]) capo = one.capoOf[hand] ?? 0;
	});
	return { some, every, capo };
}

function withCapo(known: Known, capo: number): Known {
	const { state } = known;
	return { ...known, state: state && { ...state, context: { ...state.context, capo } } };
}

/** Back at the earliest moment that there is: at once, or when the exchange is made. */
function released(known: Known, { startMs, previousEndMs }: Section): Known {
	const atOnceMs = (previousEndMs ?? startMs) + BACK_MS;
	const backMs = Math.min(startMs, atOnceMs);
	return {
		state: known.state && releasedAhead(known.state, backMs),
		isInHands: false,
		isUsed: true,
		backMs,
	};
}

function handed(
	known: Known,
	now: InstrumentState | undefined,
	{ gift, section }: { readonly gift: Gift; readonly section: Section },
): Known {
	const state = known.state ?? now ?? null;
	return {
		state: state && handedAhead(state, gift.to, section.startMs),
		isInHands: true,
		isUsed: true,
		backMs: known.backMs,
	};
}

function pieceFor(
	{ show, nowMs, instruments }: Outlook,
	{ state, isUsed, backMs }: Known,
	{
		gift,
		section,
		dueMs,
	}: { readonly gift: Gift; readonly section: Section; readonly dueMs: NightMs },
): Piece | null {
	const { instrument, to } = gift;
	const freshFromMs = section.startMs - longestFresh(show, isUsed ? null : state) * 1000;
	if (state === null) {
		// It may be in any tuning; what has been played needs wiping and a touch-up at the least.
		const wasBroken = (instruments[instrument.id]?.context.stringsDown.length ?? 0) > 0;
		if (!isUsed || wasBroken) return null;
		const { wipe, touchUp } = instrument.times;
		return { seconds: wipe + touchUp, releaseMs: Math.max(backMs, freshFromMs), dueMs };
	}
	const asked = { instrument, state, to };
	const atMs = section.hasBegun ? Math.max(section.startMs, nowMs) : section.startMs;
	if (isDoneAlready(asked, { atMs, staleAfterSeconds: longestFresh(show, state) })) return null;
	const { job, seconds } = workNeeded(asked);
	const releaseMs = job === 'restring' ? backMs : Math.max(backMs, freshFromMs);
	return { seconds, releaseMs, dueMs };
}

/** How long it stays fresh: as it is now, or at the longest once it has been played for who knows how long. */
function longestFresh(show: Show, state: InstrumentState | null): number {
	return state === null
		? Math.max(show.staleAfterSeconds, show.staleNewSeconds)
		: staleAfterSeconds(show, state);
}
