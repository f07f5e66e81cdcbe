// How late the work is at least under everything that is still possible: only hand-overs that are made
// whatever is chosen, only work that they surely need. What is not sure counts for nothing.

import type { NightMs } from '../journal/entry.ts';
import type { Board } from './board.ts';
import { busyWindows } from './busy-windows.ts';
import { exactOrder } from './exact-order.ts';
import { freeClock } from './free-clock.ts';
import type { GearFigures } from './gear-figures.ts';
import { beginningMs } from './hand-overs-ahead.ts';
import { latenessBound } from './lateness-bound.ts';
import type { Piece } from './order-work.ts';
import { onFreeClock } from './order-work.ts';
import type { Outlook } from './outlook.ts';
import { piecesFrom } from './pieces-of-work.ts';
import type { Section } from './plan.ts';
import type { Seat } from './seats.ts';
import type { LeastWork, SureGear } from './sure-gear.ts';
import { sureGear } from './sure-gear.ts';
import type { SureStint } from './sure-stints.ts';
import { sureStints } from './sure-stints.ts';

export type SureAsked = {
	readonly outlook: Outlook;
	readonly figures: GearFigures;
};

/** Work for a slot that has to be done whatever is chosen, and how little of it that may be. */
export type SurePiece = Piece & { readonly seat: number; readonly section: number };

/** Orders looked at for one bound: nearly always the first shows the least. */
const NODES = 12;

/**
 * The least lateness in milliseconds, 0 when everything may fit: as if work could be put down for other
 * work, but where that comes to less than `enoughMs`, as it can be done in one go.
 *
 * @example
 * sureLateness({ outlook, figures: gearFigures(outlook, seating) }, board, 0) // => 0
 */
export function sureLateness(asked: SureAsked, board: Board, enoughMs: number): number {
	const { pieces, handOvers } = sureWork(asked, board);
	if (pieces.length === 0) return 0;
	const clock = freeClock(busyWindows(asked.outlook.cues, handOvers));
	const waiting = piecesFrom(clock.at(asked.outlook.nowMs), onFreeClock(pieces, clock));
	const { latenessMs } = latenessBound(waiting);
	if (latenessMs >= enoughMs) return Math.max(0, latenessMs);
	return Math.max(0, exactOrder(waiting, { enoughMs: 0, nodes: NODES }).boundMs);
}

type SureWork = {
	readonly pieces: readonly SurePiece[];
	readonly handOvers: readonly { readonly section: Section; readonly wantedMs: NightMs }[];
};

/**
 * The pieces that surely have to be done, and when the hand-overs that are surely made begin.
 *
 * @example
 * sureWork({ outlook, figures: gearFigures(outlook, seating) }, board).pieces.map(({ seconds }) => seconds) // => [60]
 */
export function sureWork({ outlook, figures }: SureAsked, board: Board): SureWork {
	const gear = sureGear(outlook, { board, figures });
	const stints = sureStints(board);
	const pieces: SurePiece[] = [];
	const handOvers = outlook.sections.flatMap((section, place) => {
		const here = stints[place] ?? [];
		const seconds = here.reduce((sum, stint) => sum + shortestHandOver(board, stint), 0);
		const wantedMs = beginningMs(section, seconds);
		gear.goTo(place, here);
		for (const stint of here) {
			const work = leastWork({ board, gear, place }, stint);
			if (work !== null) {
				pieces.push({ ...work, dueMs: wantedMs, seat: stint.seat, section: place });
			}
		}
		gear.handOver(place, here);
		return here.length === 0 ? [] : [{ section, wantedMs }];
	});
	return { pieces, handOvers };
}

function shortestHandOver({ seating }: Board, { instruments }: SureStint): number {
	let least = Number.POSITIVE_INFINITY;
	for (const instrument of instruments) {
		least = Math.min(least, seating.handOverSeconds[instrument] ?? 0);
	}
	return least;
}

type At = { readonly board: Board; readonly gear: SureGear; readonly place: number };

/** What any of these hands takes at least; null where one of them may take nothing. */
function leastWork({ board, gear, place }: At, { seat, hands }: SureStint): LeastWork | null {
	const { instrumentOf, settingOf } = board.seating.seats[seat] as Seat;
	let seconds = Number.POSITIVE_INFINITY;
	let releaseMs = Number.POSITIVE_INFINITY;
	for (const hand of hands) {
		const one = gear.pieceFor(place, instrumentOf[hand] ?? 0, settingOf[hand] ?? 0);
		if (one === null) return null;
		seconds = Math.min(seconds, one.seconds);
		releaseMs = Math.min(releaseMs, one.releaseMs);
	}
	return { seconds, releaseMs };
}
