// The pieces of work that the stints ahead ask for, with the time that each has, in the order in which
// to do them.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { NightMs } from '../../journal/entry.ts';
import { recheckSeconds } from '../../session/readiness.ts';
import type { Outlook } from '../demand/outlook.ts';
import type { PlannedHandOver, Section, Work } from '../plan.ts';
import type { FreeClock } from './free-clock.ts';
import { beginningMs } from './hand-overs-ahead.ts';
import type { Piece } from './order-work.ts';
import { orderWork } from './order-work.ts';
import type { Stint } from './stints.ts';
import { isDoneAlready, workNeeded } from './work-needed.ts';

/** An instrument that is to be handed, as it is before any work for that. */
export type Handed = Pick<Stint, 'instrument' | 'hand' | 'state' | 'backMs'> & {
	readonly section: Section;
};

export type WorkPiece = Piece & Pick<Work, 'job' | 'capo'> & { readonly of: Handed };

export type StintPiece = WorkPiece & { readonly stint: Stint };

/**
 * The pieces in the order in which to do them, with the time that each has.
 *
 * @example
 * workInOrder(outlook, pieces, clock).map(({ instrument, seconds }) => [instrument, seconds]) // => [['A1', 60]]
 */
export function workInOrder(
	outlook: Outlook,
	pieces: readonly StintPiece[],
	clock: FreeClock,
): readonly Work[] {
	const { nowMs } = outlook;
	const intervalEndsMs = intervalEnd(outlook);
	return orderWork(pieces, { nowMs, clock, intervalEndsMs }).timed.map(
		({ piece, startMs, finishMs, beginByMs }): Work => ({
			job: piece.job,
			instrument: piece.stint.instrument.id,
			player: piece.stint.choice.player,
			section: piece.stint.choice.section,
			to: piece.stint.hand.tuning,
			capo: piece.capo,
			isEarly: piece.isEarly,
			seconds: piece.seconds,
			fromMs: Math.max(piece.releaseMs, nowMs),
			wantedMs: piece.dueMs,
			startMs,
			finishMs,
			slackSeconds: (piece.dueMs - finishMs) / 1000,
			shortSeconds: Math.max(0, clock.at(finishMs) - clock.at(piece.dueMs)) / 1000,
			beginByMs,
		}),
	);
}

/**
 * When the interval that is on ends; null where none is.
 *
 * @example
 * intervalEnd(outlook) // => null
 */
export function intervalEnd({ isInterval, sections }: Outlook): NightMs | null {
	return isInterval ? (sections[0]?.startMs ?? null) : null;
}

/**
 * One piece for each stint whose instrument is not ready as wanted and fresh when it is handed, or two where
 * pitches or strings can go on so early that only the touch-up is left to be fresh; by the places of their
 * instruments in the show.
 *
 * @example
 * piecesFor(outlook, stints, handOvers).map(({ seconds }) => seconds) // => [60]
 */
export function piecesFor(
	{ show, nowMs }: Outlook,
	stints: readonly Stint[],
	handOvers: readonly PlannedHandOver[],
): readonly StintPiece[] {
	const wanted = new Map(handOvers.map(({ section, wantedMs }) => [section, wantedMs]));
	const place = new Map(show.instruments.map(({ id }, index) => [id, index]));
	const placeOf = ({ stint }: StintPiece) => place.get(stint.instrument.id) ?? 0;
	return stints
		.flatMap((stint): readonly StintPiece[] => {
			const { instrument, hand, state } = stint;
			const { section } = stint.choice;
			const handed = { instrument, hand, state, backMs: stint.backMs, section };
			const dueMs = wanted.get(section) ?? beginningMs(section, instrument.times.handOver);
			const recheck = recheckSeconds(show, instrument, hoursWhenHanded(state));
			const asked = { instrument, state, to: hand };
			const handedMs = section.hasBegun ? Math.max(section.startMs, nowMs) : section.startMs;
			if (isDoneAlready(asked, { atMs: handedMs, recheckSeconds: recheck })) return [];
			return partsOf(handed, { dueMs, recheck, nowMs }).map((one) => ({ ...one, stint }));
		})
		.sort((one, other) => placeOf(one) - placeOf(other));
}

/** Strings put on for it are new then. */
function hoursWhenHanded({ context }: InstrumentState): number | null {
	return context.stringsDown.length > 0 ? 0 : context.stringHours;
}

export type When = {
	readonly dueMs: NightMs;
	/** How long "ready" lasts on it, in seconds. */
	readonly recheck: number;
	readonly nowMs: NightMs;
};

/**
 * All of the work in one piece; or in two, first what can be done as soon as the instrument is back and last
 * what is to be fresh.
 *
 * @example
 * partsOf(handedA1, { dueMs: 600000, recheck: 900, nowMs: 0 }).map(({ seconds }) => seconds) // => [45]
 */
export function partsOf(of: Handed, { dueMs, recheck, nowMs }: When): readonly WorkPiece[] {
	const { instrument, state, hand, section } = of;
	const { job, seconds, lastSeconds, hasEarlyPart } = workNeeded({ instrument, state, to: hand });
	const firstMs = (seconds - lastSeconds) * 1000;
	const backMs = of.backMs ?? Number.NEGATIVE_INFINITY;
	const freshFromMs = section.startMs - recheck * 1000;
	const whole = { of, capo: hand.capo, dueMs };
	if (!hasEarlyPart || freshFromMs <= Math.max(backMs, nowMs) + firstMs) {
		const releaseMs = Math.max(backMs, freshFromMs - firstMs);
		return [{ ...whole, job, seconds, releaseMs, isEarly: false }];
	}
	const first: WorkPiece = {
		...whole,
		job,
		capo: state.context.capo,
		seconds: seconds - lastSeconds,
		releaseMs: backMs,
		dueMs: dueMs - lastSeconds * 1000,
		isEarly: true,
	};
	const last: WorkPiece = {
		...whole,
		job: 'touch-up',
		seconds: lastSeconds,
		releaseMs: freshFromMs,
		isEarly: false,
	};
	return [first, last];
}
