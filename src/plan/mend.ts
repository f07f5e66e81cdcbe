// What would mend a night that does not work: single changes of the show, each planned; where none is
// enough alone, one after the other.

import type { Show } from '../showfile/show.ts';
import type { Plan, Section, Slot } from './plan.ts';
import { momentBefore, readyAtZero } from './plan-before-doors.ts';
import { planCore } from './plan-core.ts';
import type { Shortfall } from './shortfall.ts';
import { compareShortfalls, isWorking, shortfallOf } from './shortfall.ts';
import type { ShowChange } from './show-changes.ts';
import { inEachOthersPlace, leftOut, longerGap, oneMore, tunedBefore } from './show-changes.ts';

export type Mend = {
	/** At most three, the cheapest first. */
	readonly changes: readonly ShowChange[];
	/** Each is enough alone, or all of them are needed. */
	readonly isEachEnough: boolean;
	/** Whether they are enough. */
	readonly isMended: boolean;
};

type Tried = {
	readonly change: ShowChange;
	readonly plan: Plan;
	readonly shortfall: Shortfall;
};

const MOST_CHANGES = 3;
/** Some hundred plans are made, so each looks less far than the one that is shown. */
const BUDGET = 40_000;
/** Troubles looked at, the earliest: what mends them often mends what follows from them. */
const MOST_TROUBLES = 3;
/** Songs this far apart are tried in each other's place. */
const FARTHEST_SWAP = 4;
/** Gaps are made longer by a multiple of this, up to the most. */
const GAP_STEP_SECONDS = 5;
const MOST_GAP_STEPS = 120;

/**
 * The cheapest changes of a show whose plan does not work. Null when it works.
 *
 * @example
 * mendOf(show, beforeDoors) // => null
 */
export function mendOf(show: Show, plan: Plan): Mend | null {
	const shortfall = shortfallOf(show, plan);
	if (isWorking(shortfall)) return null;
	const enough = tryAll(show, plan).filter((tried) => isWorking(tried.shortfall));
	if (enough.length > 0) {
		return { changes: cheapest(enough), isEachEnough: true, isMended: true };
	}
	return oneAfterTheOther(show, { plan, shortfall });
}

/** The three cheapest; of one kind only the cheapest, but that there is a choice of songs to leave out. */
function cheapest(tried: readonly Tried[]): readonly ShowChange[] {
	const kinds = new Set<string>();
	return [...tried]
		.sort((one, other) => one.change.price - other.change.price)
		.map(({ change }) => change)
		.filter(({ kind }) => {
			const isFirst = kind === 'drop' || !kinds.has(kind);
			kinds.add(kind);
			return isFirst;
		})
		.slice(0, MOST_CHANGES);
}

function oneAfterTheOther(
	opened: Show,
	from: { readonly plan: Plan; readonly shortfall: Shortfall },
): Mend {
	const changes: ShowChange[] = [];
	let [show, plan, shortfall] = [opened, from.plan, from.shortfall];
	while (changes.length < MOST_CHANGES && !isWorking(shortfall)) {
		const [best] = [...tryAll(show, plan)].sort(
			(one, other) =>
				compareShortfalls(one.shortfall, other.shortfall) || one.change.price - other.change.price,
		);
		if (best === undefined || compareShortfalls(best.shortfall, shortfall) >= 0) break;
		changes.push(best.change);
		[show, plan, shortfall] = [best.change.show, best.plan, best.shortfall];
	}
	return { changes, isEachEnough: false, isMended: isWorking(shortfall) };
}

function tried(change: ShowChange): Tried {
	const { plan } = planCore(momentBefore(readyAtZero(change.show)), { budget: BUDGET });
	return { change, plan, shortfall: shortfallOf(change.show, plan) };
}

/** Every change that could help what is wrong, planned. */
function tryAll(show: Show, plan: Plan): readonly Tried[] {
	const troubled = troublesOf(plan).slice(0, MOST_TROUBLES);
	const sections = [...new Set(troubled.map(({ section }) => section))];
	const changes = [
		...troubled.flatMap(({ section, player }) => {
			const slot = plan.slots.find((one) => one.section === section && one.player === player);
			return slot === undefined ? [] : forSlot(show, slot);
		}),
		...sections.flatMap((section) => swaps(show, section)),
		...(shortfallOf(show, plan).pastCurfew > 0
			? show.set.map((_, place) => leftOut(show, place))
			: []),
	];
	return [
		...changes.filter((change) => change !== null).map(tried),
		...sections.flatMap((section) => shortestGap(show, section) ?? []),
	];
}

type Trouble = { readonly section: Section; readonly player: string };

/** Where something is missing, late or too much for its gap, in playing order. */
function troublesOf({ slots, handOvers, work }: Plan): readonly Trouble[] {
	return [
		...slots.filter(({ why }) => why !== null),
		...handOvers.filter(({ fits }) => !fits),
		...work.filter(({ slackSeconds }) => slackSeconds < 0),
	].sort((one, other) => one.section.startMs - other.section.startMs);
}

function forSlot(show: Show, slot: Slot): readonly (ShowChange | null)[] {
	const instrument = slot.instrument ?? slot.named;
	return [
		instrument === null ? null : tunedBefore(show, instrument, slot.tuning),
		oneMore(show, slot),
	];
}

function swaps(show: Show, { item }: Section): readonly (ShowChange | null)[] {
	const place = Number(item) - 1;
	return Array.from({ length: 2 * FARTHEST_SWAP + 1 }, (_, index) => place - FARTHEST_SWAP + index)
		.filter((other) => other !== place)
		.map((other) => inEachOthersPlace(show, Math.min(place, other), Math.max(place, other)));
}

/** The shortest longer gap that leaves nothing wrong with this section, or null when none does. */
function shortestGap(show: Show, section: Section): Tried | null {
	if (section.gapSeconds === null || section.point > 0) return null;
	const longer = (steps: number) => tried(longerGap(show, section, steps * GAP_STEP_SECONDS));
	const isWell = ({ plan }: Tried) =>
		!troublesOf(plan).some(
			(one) => one.section.item === section.item && one.section.point === section.point,
		);
	let best: Tried | null = null;
	let [least, most] = [1, MOST_GAP_STEPS];
	while (least <= most) {
		const middle = best === null && most === MOST_GAP_STEPS ? most : Math.floor((least + most) / 2);
		const one = longer(middle);
		if (isWell(one)) {
			best = one;
			most = middle - 1;
		} else if (best === null) return null;
		else least = middle + 1;
	}
	return best;
}
