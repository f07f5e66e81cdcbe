// The pieces of work that the stints ahead ask for, with the time that each has, in the order in which
// to do them.

import type { NightMs } from '../journal/entry.ts';
import { staleAfterSeconds } from '../session/readiness.ts';
import type { FreeClock } from './free-clock.ts';
import { beginningMs } from './hand-overs-ahead.ts';
import type { Piece } from './order-work.ts';
import { orderWork } from './order-work.ts';
import type { Outlook } from './outlook.ts';
import type { PlannedHandOver, Work } from './plan.ts';
import type { Stint } from './stints.ts';
import type { WorkNeeded } from './work-needed.ts';
import { isDoneAlready, workNeeded } from './work-needed.ts';

export type WorkAhead = {
	readonly work: readonly Work[];
	/** In no other order is the worst of it less late. */
	readonly isProved: boolean;
};

type StintPiece = Piece & { readonly stint: Stint; readonly needed: WorkNeeded };

/**
 * One piece for each stint whose instrument is not ready as wanted and fresh when it is handed. It is
 * not begun before the instrument is back, nor, but for new strings, so early that it would be stale.
 *
 * @example
 * workAhead(outlook, stints, { handOvers, clock }).work.map(({ instrument, seconds }) => [instrument, seconds]) // => [['A1', 60]]
 */
export function workAhead(
	{ show, nowMs }: Outlook,
	stints: readonly Stint[],
	{
		handOvers,
		clock,
	}: { readonly handOvers: readonly PlannedHandOver[]; readonly clock: FreeClock },
): WorkAhead {
	const wanted = new Map(handOvers.map(({ section, wantedMs }) => [section, wantedMs]));
	const place = new Map(show.instruments.map(({ id }, index) => [id, index]));
	const pieces = stints.flatMap((stint): readonly StintPiece[] => {
		const { instrument, hand, state } = stint;
		const { section } = stint.choice;
		const asked = { instrument, state, to: hand };
		const stale = staleAfterSeconds(show, state);
		const handedMs = section.hasBegun ? Math.max(section.startMs, nowMs) : section.startMs;
		if (isDoneAlready(asked, { atMs: handedMs, staleAfterSeconds: stale })) return [];
		const needed = workNeeded(asked);
		return [
			{
				stint,
				needed,
				seconds: needed.seconds,
				releaseMs: releaseMs(stint, needed, section.startMs - stale * 1000),
				dueMs: wanted.get(section) ?? beginningMs(section, instrument.times.handOver),
			},
		];
	});
	pieces.sort((one, other) => placeOf(one, place) - placeOf(other, place));
	const { timed, isProved } = orderWork(pieces, { nowMs, clock });
	const work = timed.map(
		({ piece, startMs, finishMs, beginByMs }): Work => ({
			job: piece.needed.job,
			instrument: piece.stint.instrument.id,
			player: piece.stint.choice.player,
			section: piece.stint.choice.section,
			to: piece.stint.hand.tuning,
			capo: piece.stint.hand.capo,
			seconds: piece.seconds,
			fromMs: Math.max(piece.releaseMs, nowMs),
			wantedMs: piece.dueMs,
			startMs,
			finishMs,
			slackSeconds: (piece.dueMs - finishMs) / 1000,
			beginByMs,
		}),
	);
	return { work, isProved };
}

function releaseMs(stint: Stint, { job }: WorkNeeded, freshFromMs: NightMs): NightMs {
	const backMs = stint.backMs ?? Number.NEGATIVE_INFINITY;
	return job === 'restring' ? backMs : Math.max(backMs, freshFromMs);
}

function placeOf({ stint }: StintPiece, place: ReadonlyMap<string, number>): number {
	return place.get(stint.instrument.id) ?? 0;
}
