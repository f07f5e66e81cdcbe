// The changes of a show that could mend its night, each planned: the few that are most to the point first,
// then songs in each other's place, of which there are many. Counted, never timed, so that the same show is
// always told the same.

import type { Show } from '../../showfile/show.ts';
import { slotStandIns } from '../backups/slot-stand-ins.ts';
import { soundOfSlot } from '../backups/stand-ins.ts';
import type { Budget } from '../choice/beam-search.ts';
import { mayHave } from '../demand/options.ts';
import type { Plan, Section, Slot } from '../plan.ts';
import { momentBefore, readyAtZero } from '../timed-choice/before-doors.ts';
import { planCore } from '../timed-choice/plan-core.ts';
import type { Shortfall } from './shortfall.ts';
import { isWorking, shortfallOf } from './shortfall.ts';
import type { ShowChange } from './show-changes.ts';
import {
	inEachOthersPlace,
	leftOut,
	longerGap,
	onAnother,
	oneMore,
	tunedBefore,
} from './show-changes.ts';
import { tightPlaces } from './tight-places.ts';

/** A show with its plan, and what that wants. */
export type Night = {
	readonly show: Show;
	readonly plan: Plan;
	readonly shortfall: Shortfall;
};

export type Tried = Night & { readonly change: ShowChange };

/** Plans a change; null where that is not worth a plan. */
type Attempt = (change: ShowChange | null) => Tried | null;

/** Each looks less far than the plan that is shown: whatever it finds to work, works. */
const BUDGET = 40_000;
/** Of one slot; further down stands what takes longer, or is less alike. */
const MOST_EXCHANGES = 3;
/** Gaps are made longer by a multiple of this, up to the most. */
const STEP_SECONDS = 5;
const MOST_SECONDS = 600;

/**
 * What was tried. Of each kind that is enough alone, the cheapest is among them as far as `from` reaches;
 * of songs to leave out all are.
 *
 * @example
 * changesTried({ show, plan, shortfall }, { left: 1 }).length // => 1
 */
export function changesTried(night: Night, from: Budget): readonly Tried[] {
	const { show, plan, shortfall } = night;
	const all: Tried[] = [];
	const known = new Set<string>();
	/** Of each kind, the price of what is enough: what costs as much is not tried. */
	const most = new Map<ShowChange['kind'], number>();
	const attempt: Attempt = (change) => {
		if (change === null || from.left <= 0) return null;
		// The same is one change, whichever slot led to it.
		const { price, show: changed, ...asked } = change;
		const key = JSON.stringify(asked);
		if (known.has(key) || price >= (most.get(change.kind) ?? Number.POSITIVE_INFINITY)) return null;
		known.add(key);
		const then = planCore(momentBefore(readyAtZero(changed)), { budget: BUDGET, from }).plan;
		const one = { change, show: changed, plan: then, shortfall: shortfallOf(changed, then) };
		all.push(one);
		if (isWorking(one.shortfall) && change.kind !== 'drop') most.set(change.kind, price);
		return one;
	};
	const troubles = troublesOf(plan);
	const troubled = new Set(troubles.map(({ section }) => section));
	for (const change of retunings(show, plan)) attempt(change);
	for (const section of troubled) attemptGaps(night, section, attempt);
	for (const change of exchanges(show, plan, troubles)) attempt(change);
	for (const slot of troubles) attempt(oneMore(show, slot));
	if (shortfall.pastCurfew > 0) {
		// Nothing else brings the end forward.
		for (const place of show.set.keys()) attempt(leftOut(show, place));
	} else {
		for (const change of swaps(show, troubles)) attempt(change);
		for (const section of plan.sections) {
			if (!troubled.has(section)) attemptGaps(night, section, attempt);
		}
	}
	// Only to see whether any length would be enough: nobody waits so long for half of it.
	const isTooLong = ({ change }: Tried) => change.kind === 'gap' && change.price >= MOST_SECONDS;
	return all.filter((one) => isWorking(one.shortfall) || !isTooLong(one));
}

/** Slots where something is missing, late or too much for its gap, in playing order, each once. */
function troublesOf({ slots, handOvers, work }: Plan): readonly Slot[] {
	const late = work.filter(({ slackSeconds }) => slackSeconds < 0);
	const bad = [...handOvers.filter(({ fits }) => !fits), ...late];
	return slots.filter(
		({ isMissing, section, player }) =>
			isMissing || bad.some((one) => one.section === section && one.player === player),
	);
}

/**
 * Each instrument in each other tuning in which it is played: less is to be done for others then, too. For
 * what finds nothing to be played on, each that could be.
 */
function retunings(show: Show, { slots }: Plan): readonly ShowChange[] {
	const known = new Set(
		show.instruments.map(({ id, tuning }) => `${id} ${tuning.notes.join(' ')}`),
	);
	return slots.flatMap((slot) => {
		const { instrument, named, tuning, player } = slot;
		const own = instrument ?? named;
		const kind = own === null ? soundOfSlot(show, slot)?.kind : null;
		const could = show.instruments.filter((one) =>
			own === null ? one.kind === kind && mayHave(one, player) : one.id === own,
		);
		return could.flatMap(({ id }) => {
			const key = `${id} ${tuning.notes.join(' ')}`;
			if (known.has(key)) return [];
			known.add(key);
			return [tunedBefore(show, id, tuning)];
		});
	});
}

/** What the songs name, played on the best of what could take over that is not meant for somebody else. */
function exchanges(show: Show, plan: Plan, troubles: readonly Slot[]): readonly ShowChange[] {
	const isAsked = (slot: Slot) => slot.named !== null && troubles.includes(slot);
	const isTheirs = (id: string, player: string) =>
		show.instruments.some((one) => one.id === id && mayHave(one, player));
	return slotStandIns(readyAtZero(show), { plan, costs: 'none', isAsked }).flatMap(
		({ slot, standIns }) =>
			standIns
				.filter(({ instrument }) => isTheirs(instrument, slot.player))
				.slice(0, MOST_EXCHANGES)
				.map((hand) => onAnother(show, slot, hand)),
	);
}

/** As much as is wanting here, then as in all the night, then the most; of what is enough the least, by bisection. */
function attemptGaps({ show, plan, shortfall }: Night, section: Section, attempt: Attempt): void {
	const start = plan.sections.find(({ item, point }) => item === section.item && point === 0);
	if (start === undefined) return;
	const isEnough = (steps: number) => {
		const one = attempt(longerGap(show, start, steps * STEP_SECONDS));
		return one !== null && isWorking(one.shortfall);
	};
	let tooFew = 0;
	let enough: number | null = null;
	const [tightest] = tightPlaces(plan).filter((one) => one.section === section);
	const here = -(tightest?.spareSeconds ?? 0);
	for (const seconds of [here, shortfall.lateness, MOST_SECONDS]) {
		const steps = Math.ceil(Math.min(seconds, MOST_SECONDS) / STEP_SECONDS);
		if (enough !== null || steps <= tooFew) continue;
		if (isEnough(steps)) enough = steps;
		else tooFew = steps;
	}
	// What is wanting is mostly just what is needed.
	for (let middle = (enough ?? 0) - 1; enough !== null && enough - tooFew > 1; ) {
		if (isEnough(middle)) enough = middle;
		else tooFew = middle;
		middle = Math.floor((tooFew + enough) / 2);
	}
}

/**
 * Two songs of which one stands where something is wanting, or just before, first; then all others of which
 * one comes no later than the first trouble; each time the nearest first.
 */
function swaps(show: Show, troubles: readonly Slot[]): readonly ShowChange[] {
	const places = troubles.map(({ section }) => Number(section.item) - 1);
	const isNear = (place: number) => places.includes(place) || places.includes(place + 1);
	return show.set
		.flatMap((_, one) => show.set.slice(one + 1).map((_, more) => ({ one, other: one + 1 + more })))
		.filter(({ one }) => one <= Math.min(...places))
		.map((pair) => ({
			...pair,
			group: isNear(pair.one) || isNear(pair.other) ? 0 : 1,
			distance: pair.other - pair.one,
		}))
		.sort((pair, than) => pair.group - than.group || pair.distance - than.distance)
		.flatMap(({ one, other }) => inEachOthersPlace(show, one, other) ?? []);
}
