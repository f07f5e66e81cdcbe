// Each of some players taken alone, by the weights of the group that they are chosen with.

import type { Board, Budget } from './board.ts';
import type { Alone } from './choose-alone.ts';
import { chooseAlone } from './choose-alone.ts';
import type { GroupSetting } from './group-setting.ts';

/**
 * The choosing of each of these seats by itself; null where one of them has no way through. What was
 * worked out for a seat holds as long as the same is possible for it.
 *
 * @example
 * aloneIn(board, [0, 1], { setting: groupSetting(board, [0, 1]), budget: { left: 10000 } }).length // => 2
 */
export function aloneIn(
	board: Board,
	seats: readonly number[],
	{ setting, budget }: { readonly setting: GroupSetting; readonly budget: Budget },
): readonly Alone[] | null {
	const { weights, known } = setting;
	// Whoever is chosen for alone shares what others may ever have.
	const players = seats.length > 1 ? playersOf(board) : board.may.players;
	const all: Alone[] = [];
	for (const [index, seat] of seats.entries()) {
		const possible = board.possible[seat] as Uint8Array;
		const before = known.get(possible);
		const isFollowed = (instrument: number): boolean =>
			board.may.players[instrument] === 1 ||
			(players[instrument] === 1 && (setting.followed[instrument] ?? -1) >= 0);
		if (before?.isFollowedBy(isFollowed)) {
			all.push(before);
			continue;
		}
		const stepCosts = setting.stepCosts[index] as Float64Array;
		const one = chooseAlone({ board, seat, weights, stepCosts, isFollowed, budget });
		if (one === null) return null;
		known.set(possible, one);
		all.push(one);
	}
	return all;
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
