// The pieces of work that the stints ahead ask for: in one piece, or early and again when it is to be fresh.

import type { NightMs } from '../../journal/entry.ts';
import { recheckSeconds } from '../../session/readiness.ts';
import type { Outlook } from '../demand/outlook.ts';
import type { Work } from '../plan.ts';
import type { Stint } from './hand-overs-ahead.ts';
import type { Piece } from './order-work.ts';
import { isDoneAlready, workNeeded } from './work-needed.ts';

/** An instrument that is to be handed, as it is before any work for that. */
type Handed = Pick<Stint, 'instrument' | 'hand' | 'state' | 'backMs' | 'section'>;

type WorkPiece = Piece & Pick<Work, 'job' | 'capo'> & { readonly of: Handed };

export type StintPiece = WorkPiece & { readonly stint: Stint };

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
 * piecesFor(outlook, stints).map(({ seconds }) => seconds) // => [60]
 */
export function piecesFor(
	{ show, nowMs }: Outlook,
	stints: readonly Stint[],
): readonly StintPiece[] {
	const ofInstrument = Map.groupBy(stints, ({ instrument }) => instrument);
	const inPlace = show.instruments.flatMap((one) => ofInstrument.get(one) ?? []);
	return inPlace.flatMap((stint): readonly StintPiece[] => {
		const { instrument, hand: to, state, section, wantedMs: dueMs } = stint;
		const { stringHours, stringsDown } = state.context;
		// Strings put on for it are new then.
		const recheck = recheckSeconds(show, instrument, stringsDown.length > 0 ? 0 : stringHours);
		const atMs = section.hasBegun ? Math.max(section.startMs, nowMs) : section.startMs;
		if (isDoneAlready({ instrument, state, to }, { atMs, recheckSeconds: recheck })) return [];
		return partsOf(stint, { dueMs, recheck, nowMs }).map((one) => ({ ...one, stint }));
	});
}

type When = {
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
	const firstSeconds = seconds - lastSeconds;
	const backMs = of.backMs ?? Number.NEGATIVE_INFINITY;
	const freshFromMs = section.startMs - recheck * 1000;
	const last = { of, capo: hand.capo, dueMs, isEarly: false };
	if (!hasEarlyPart || freshFromMs <= Math.max(backMs, nowMs) + firstSeconds * 1000) {
		const releaseMs = Math.max(backMs, freshFromMs - firstSeconds * 1000);
		return [{ ...last, job, seconds, releaseMs }];
	}
	const first = {
		of,
		job,
		capo: state.context.capo,
		seconds: firstSeconds,
		releaseMs: backMs,
		dueMs: dueMs - lastSeconds * 1000,
		isEarly: true,
	};
	return [first, { ...last, job: 'touch-up', seconds: lastSeconds, releaseMs: freshFromMs }];
}
