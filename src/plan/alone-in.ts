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
	const players = playersOf(board);
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
	for (const [place, { size, instrumentOf }] of seating.seats.entries()) {
		const isMine = new Uint8Array(seating.instrumentCount);
		possible[place]?.forEach((is, at) => {
			const instrument = instrumentOf[at % size] ?? -1;
			if (is === 1 && instrument >= 0) isMine[instrument] = 1;
		});
		for (let one = 0; one < players.length; one += 1)
			players[one] = (players[one] ?? 0) + (isMine[one] ?? 0);
	}
	return players;
}
