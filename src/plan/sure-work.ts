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
	const stints = sureStints(outlook, board);
	const handOvers = outlook.sections.flatMap((section, place) => {
		const seconds = stints
			.filter((one) => one.place === place)
			.reduce((sum, one) => sum + shortestHandOver(one), 0);
		return seconds === 0 ? [] : [{ section, wantedMs: beginningMs(section, seconds) }];
	});
	const clock = freeClock(busyWindows(session, outlook.sections, handOvers));
	const wanted = new Map(handOvers.map(({ section, wantedMs }) => [section, wantedMs]));
	const pieces = surePieces(outlook, board, { stints, wanted });
	return Math.max(0, preemptiveLateness(pieces, { nowMs: outlook.nowMs, clock }).latenessMs);
}

/** A stint that surely begins, with one of these. */
type SureStint = { readonly place: number; readonly ways: readonly Gift[] };

type Gift = {
	/** The instrument's place in the show. */
	readonly index: number;
	readonly instrument: Instrument;
	readonly to: OpenWithCapo;
};

function shortestHandOver({ ways }: SureStint): number {
	return Math.min(...ways.map(({ instrument }) => instrument.times.handOver));
}

function sureStints({ show, sections }: Outlook, board: Board): readonly SureStint[] {
	const { seating, steps, possible } = board;
	return sections.flatMap((_, place) =>
		seating.seats.flatMap((one, seat): readonly SureStint[] => {
			const mine = steps[seat];
			const row = place * one.size;
			const hands = new Set<number>();
			for (let before = 0; before < one.size; before += 1) {
				const isFrom =
					place === 0 ? before === one.start : possible[seat]?.[row - one.size + before] === 1;
				const end = mine?.first[row + before + 1] ?? 0;
				for (let step = mine?.first[row + before] ?? 0; isFrom && step < end; step += 1) {
					const hand = mine?.to[step] ?? 0;
					if (possible[seat]?.[row + hand] !== 1) continue;
					if (((mine?.flags[step] ?? 0) & BEGINS) === 0) return [];
					hands.add(hand);
				}
			}
			const ways = [...hands].flatMap((hand): readonly Gift[] => {
				const index = one.instrumentOf[hand] ?? -1;
				const instrument = show.instruments[index];
				const option = one.asks[place]?.options[one.optionHands[place]?.indexOf(hand) ?? -1];
				if (instrument === undefined || option === undefined) return [];
				return [{ index, instrument, to: option.hand }];
			});
			return ways.length > 0 && ways.length === hands.size ? [{ place, ways }] : [];
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
	readonly stints: readonly SureStint[];
	readonly wanted: ReadonlyMap<Section, NightMs>;
};

function surePieces(outlook: Outlook, board: Board, { stints, wanted }: Sure): readonly Piece[] {
	const known = outlook.show.instruments.map(({ id }) => knownNow(outlook, id));
	return outlook.sections.flatMap((section, place) => {
		const here = stints.filter((one) => one.place === place);
		const before = known.map((one, index) => {
			const isGiven = here.some(({ ways }) => ways.some((way) => way.index === index));
			const { every } = holdersAt(board, index, place);
			return one.isInHands && (isGiven || !every) ? released(one, section) : one;
		});
		outlook.show.instruments.forEach(({ id }, index) => {
			const gift = here.find(({ ways }) => ways.length === 1 && ways[0]?.index === index)?.ways[0];
			const now = before[index] as Known;
			known[index] =
				gift === undefined
					? heldOn(now, holdersAt(board, index, place))
					: handed(now, outlook.instruments[id], { gift, section });
		});
		return here.flatMap((stint) => {
			const dueMs = wanted.get(section) ?? beginningMs(section, shortestHandOver(stint));
			const pieces = stint.ways.map((gift) =>
				pieceFor(outlook, before[gift.index] as Known, { gift, section, dueMs }),
			);
			return leastOf(pieces);
		});
	});
}

/** What any of these takes at least; nothing where one of them takes nothing. */
function leastOf(pieces: readonly (Piece | null)[]): readonly Piece[] {
	const [first] = pieces;
	if (!first || pieces.includes(null)) return [];
	const all = pieces.filter((one) => one !== null);
	return [
		{
			seconds: Math.min(...all.map(({ seconds }) => seconds)),
			releaseMs: Math.min(...all.map(({ releaseMs }) => releaseMs)),
			dueMs: first.dueMs,
		},
	];
}

/** After a section in which no stint of it surely begins. */
function heldOn(known: Known, { some, every, capo }: Holders): Known {
	if (known.isInHands && capo !== null) return withCapo(known, capo);
	if (!some) return known;
	return { ...known, state: null, isInHands: every, isUsed: known.isUsed || every };
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
		const { stringsDown = [], readyAtMs = null } = instruments[instrument.id]?.context ?? {};
		const isStale = readyAtMs === null || readyAtMs < freshFromMs;
		if (stringsDown.length > 0 || !(isUsed || isStale)) return null;
		const { wipe, touchUp } = instrument.times;
		const seconds = isUsed ? wipe + touchUp : touchUp;
		return { seconds, releaseMs: Math.max(backMs, freshFromMs), dueMs };
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
