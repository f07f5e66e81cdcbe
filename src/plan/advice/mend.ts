// What would mend a night that does not work: single changes of the show, each planned; where none is
// enough alone, two together; then one after the other.

import type { Show } from '../../showfile/show.ts';
import type { Budget } from '../choice/beam-search.ts';
import type { Plan } from '../plan.ts';
import type { Night, Trials, Tried } from './changes-tried.ts';
import { changesTried, tried } from './changes-tried.ts';
import { compareShortfalls, isWorking, shortfallOf } from './shortfall.ts';
import { leftOut, type ShowChange } from './show-changes.ts';

export type Mend = {
	/** At most three, the cheapest first. */
	readonly changes: readonly ShowChange[];
	/** Each is enough alone, or all of them are needed. */
	readonly isEachEnough: boolean;
	/** Whether they are enough. */
	readonly isMended: boolean;
};

const MOST_CHANGES = 3;
const ANY_PRICE = Number.POSITIVE_INFINITY;
/** Steps of all plans together, where nobody else takes from them: about a second. */
const BUDGET = 3_000_000;
const MOST_TRIALS = 400;
/** As many changes that help, and are not enough, are tried with a second one. */
const MOST_FIRSTS = 4;
/** A gap goes with one of its two songs, and may be another one where they part: common practice, no source. */
const SLACK_SECONDS = 60;

/**
 * The cheapest changes of a show whose plan does not work. Null when it works.
 *
 * @example
 * mendOf(show, beforeDoors) // => null
 */
export function mendOf(show: Show, plan: Plan, from: Budget = { left: BUDGET }): Mend | null {
	const night = { show, plan, shortfall: shortfallOf(show, plan) };
	if (isWorking(night.shortfall)) return null;
	const half = MOST_TRIALS / 2;
	const singles = changesTried(night, { trials: { left: half, from }, below: ANY_PRICE });
	const enough = singles.filter(({ shortfall }) => isWorking(shortfall));
	if (enough.length > 0) {
		return { changes: cheapest(enough), isEachEnough: true, isMended: true };
	}
	const out = night.shortfall.pastCurfew > 0 ? twoLeftOut(night, { left: half, from }) : null;
	return out
		? inARow(out)
		: together(helpful(singles, night).slice(0, MOST_FIRSTS), { left: half, from });
}

/** The three cheapest; of one kind only the cheapest, but that there is a choice of songs to leave out. */
function cheapest(tried: readonly Tried[]): readonly ShowChange[] {
	const all = byPrice(tried).map(({ change }) => change);
	return all.filter((one) => one.kind === 'drop' || isFirstOfKind(one, all)).slice(0, MOST_CHANGES);
}

function isFirstOfKind(one: ShowChange, all: readonly ShowChange[]): boolean {
	return all.find(({ kind }) => kind === one.kind) === one;
}

/** What leaves less wanting than before, the least first; of each kind the best one. */
function helpful(tried: readonly Tried[], { shortfall }: Night): readonly Tried[] {
	const better = byPrice(tried)
		.filter((one) => compareShortfalls(one.shortfall, shortfall) < 0)
		.sort((one, other) => compareShortfalls(one.shortfall, other.shortfall));
	const changes = better.map(({ change }) => change);
	return better.filter(({ change }) => isFirstOfKind(change, changes));
}

/** The cheapest two that are enough with each other; where none are, what three in a row come to. */
function together(firsts: readonly Tried[], { left: trials, from }: Trials): Mend {
	const left = Math.floor(trials / (firsts.length + 1));
	let best: readonly Tried[] = [];
	let closest: readonly Tried[] = firsts.slice(0, 1);
	for (const first of firsts) {
		const below = best.length === 0 ? ANY_PRICE : priceOf(best) - first.change.price;
		const seconds = changesTried(first, { trials: { left, from }, below });
		for (const second of seconds) {
			const pair = [first, second];
			const isCheaper = best.length === 0 || priceOf(pair) < priceOf(best);
			if (isWorking(second.shortfall) && isCheaper) best = pair;
			const known = closest.at(-1) ?? second;
			if (compareShortfalls(second.shortfall, known.shortfall) < 0) closest = pair;
		}
	}
	if (best.length > 0) return inARow(best);
	const last = closest.at(-1);
	if (last === undefined || closest.length < 2) return inARow(closest);
	const thirds = changesTried(last, { trials: { left, from }, below: ANY_PRICE });
	const enough = thirds.filter(({ shortfall }) => isWorking(shortfall));
	const [third] = enough.length > 0 ? byPrice(enough) : helpful(thirds, last);
	return inARow(third === undefined ? closest : [...closest, third]);
}

function byPrice(tried: readonly Tried[]): readonly Tried[] {
	return [...tried].sort((one, other) => one.change.price - other.change.price);
}

function priceOf(tried: readonly Tried[]): number {
	return tried.reduce((sum, { change }) => sum + change.price, 0);
}

/** Each made to what the one before it made of the show. */
function inARow(tried: readonly Tried[]): Mend {
	return {
		changes: tried.map(({ change }) => change),
		isEachEnough: false,
		isMended: tried.slice(-1).some(({ shortfall }) => isWorking(shortfall)),
	};
}

/** The two songs that cost least of the set; only pairs that are long enough are planned. Of pairs that cost the same, the later one. */
function twoLeftOut(
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
