// Each of some players taken alone for a first look, their own instruments' tunings left out, by the
// weights of the group that they are chosen with.

import type { Board, Budget } from './board.ts';
import type { Alone } from './choose-alone.ts';
import { chooseAlone } from './choose-alone.ts';
import { RETUNINGS } from './criteria.ts';
import type { GroupSetting } from './group-setting.ts';
import { hubWays } from './hub-ways.ts';
import { seatWays } from './seat-ways.ts';
import { surelyTogether } from './surely-together.ts';

/**
 * The rough choosing of each of these seats by itself; null where one of them has no way through. What
 * was worked out for a seat holds as long as the same is possible for it.
 *
 * @example
 * aloneIn(board, [0, 1], { setting: groupSetting(board, [0, 1]), budget: { left: 10000 } }).length // => 2
 */
export function aloneIn(
	board: Board,
	seats: readonly number[],
	{ setting, budget }: { readonly setting: GroupSetting; readonly budget: Budget },
): readonly Alone[] | null {
	// Whoever is chosen for alone shares what others may ever have.
	const players = seats.length > 1 ? playersOf(board) : board.may.players;
	const retuning = setting.weights.of[RETUNINGS] ?? 0;
	const { missing } = surelyTogether(board, seats);
	const all: Alone[] = [];
	for (const [index, seat] of seats.entries()) {
		const possible = board.possible[seat] as Uint8Array;
		const ownOf = ownInstruments(board, { setting, seat, players });
		const before = setting.known.get(possible) as Alone | undefined;
		if (before?.hubWays.ways.ownOf.every((own, instrument) => own === ownOf[instrument])) {
			all.push(before);
			continue;
		}
		const ways = seatWays(board, { setting, seat, index, ownOf, missing });
		const graph = hubWays(ways, ways.aloneCost);
		const one = chooseAlone({
			hubWays: graph,
			prices: new Float64Array(graph.order.length),
			retuning,
			limit: Number.POSITIVE_INFINITY,
			isRough: true,
			budget,
		});
		if (one === null) return null;
		setting.known.set(possible, one);
		all.push(one);
	}
	return all;
}

type OwnAsked = {
	readonly setting: GroupSetting;
	readonly seat: number;
	/** For each instrument how many may still have it. */
	readonly players: Uint8Array;
};

/** For each instrument that changes its tuning and that nobody else can re-tune its number among the seat's own; else -1. */
function ownInstruments({ seating, may }: Board, { setting, seat, players }: OwnAsked): Int16Array {
	const ownOf = new Int16Array(seating.instrumentCount).fill(-1);
	let count = 0;
	for (const instrument of seating.seats[seat]?.instrumentOf ?? []) {
		const isOwn =
			may.players[instrument] === 1 ||
			(players[instrument] === 1 && setting.isFollowed[instrument] === 1);
		const isNew = instrument >= 0 && ownOf[instrument] === -1;
		if (!isNew || !isOwn || (seating.tuningCounts[instrument] ?? 0) < 2) continue;
		ownOf[instrument] = count;
		count += 1;
	}
	return ownOf;
}

/** For each instrument, how many may still have it at any time. */
function playersOf({ seating, possible }: Board): Uint8Array {
	const players = new Uint8Array(seating.instrumentCount);
	const seen = new Int16Array(seating.instrumentCount).fill(-1);
	for (const [place, { size, instrumentOf }] of seating.seats.entries()) {
		const mine = possible[place] as Uint8Array;
		for (let at = 0; at < mine.length; at += 1) {
			const instrument = mine[at] === 1 ? (instrumentOf[at % size] ?? -1) : -1;
			if (instrument < 0 || seen[instrument] === place) continue;
			seen[instrument] = place;
			players[instrument] = (players[instrument] ?? 0) + 1;
		}
	}
	return players;
}
