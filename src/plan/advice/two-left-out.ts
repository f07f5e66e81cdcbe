// Which two songs to leave out where one is not enough for the curfew. Apart from other changes, since how
// long each takes is known beforehand: only pairs that are long enough are planned.

import type { Plan } from '../plan.ts';
import type { Night, Trials, Tried } from './changes-tried.ts';
import { tried } from './changes-tried.ts';
import { isWorking } from './shortfall.ts';
import { leftOut } from './show-changes.ts';

/** A gap goes with one of its two songs, and may be another one where they part: common practice, no source. */
const SLACK_SECONDS = 60;

/**
 * The two songs that cost least of the set, one left out after the other; null where no two are enough, as
 * far as the trials reach. Of pairs that cost the same, the later one.
 *
 * @example
 * twoLeftOut({ show, plan, shortfall: { ...shortfall, pastCurfew: 3600 } }, { left: 9, from: { left: 100000 } }) // => null
 */
export function twoLeftOut(
	{ show, plan, shortfall }: Night,
	trials: Trials,
): readonly [Tried, Tried] | null {
	const songs = show.set.flatMap((_, place) => {
		const change = leftOut(show, place);
		return change === null ? [] : [{ place, change, seconds: secondsOf(plan, place) }];
	});
	const pairs = songs
		.flatMap((one, index) => songs.slice(index + 1).map((later) => ({ one, later })))
		.filter(({ one, later }) => one.seconds + later.seconds + SLACK_SECONDS >= shortfall.pastCurfew)
		.map((pair) => ({ ...pair, price: pair.one.change.price + pair.later.change.price }))
		.reverse()
		.sort((pair, other) => pair.price - other.price);
	for (const { one, later } of pairs) {
		// The place of the earlier one is still what it was.
		const both = leftOut(later.change.show, one.place);
		if (both === null) continue;
		if (trials.left === 0) return null;
		trials.left -= 1;
		const second = tried(both);
		if (isWorking(second.shortfall)) return [tried(later.change), second];
	}
	return null;
}

/** From the end of what is before it to its own end. */
function secondsOf({ sections }: Plan, place: number): number {
	const own = sections.filter(({ item }) => Number(item) - 1 === place);
	const from = own[0]?.previousEndMs ?? own[0]?.startMs ?? 0;
	return ((own.at(-1)?.endMs ?? from) - from) / 1000;
}
