// What a choice costs later: two plans of one night, with it and without, told apart in sentences. Only
// what becomes worse is said; what was bad already is no reason against the choice.

import { minutesSeconds } from '../base/duration.ts';
import type { NightMs } from '../journal/entry.ts';
import type { Session } from '../session/session.ts';
import type { Show } from '../showfile/show.ts';
import { playerName, songTitle } from '../showfile/shown-names.ts';
import type { Plan, PlannedHandOver, Section, Slot, Work } from './plan.ts';
import { planCore } from './plan-core.ts';
import type { LaterCost } from './stand-ins.ts';
import type { Moment } from './timeline.ts';

export type Compared = {
	readonly show: Show;
	/** The first song's start, from which marks count. */
	readonly zeroMs: NightMs;
	readonly without: Troubled;
	readonly with: Troubled;
};

/** What can be wrong with a plan stands there. */
type Troubled = Pick<Plan, 'slots' | 'handOvers' | 'work'>;

const NO_TROUBLE: Troubled = { slots: [], handOvers: [], work: [] };

/** A handful of plans answer one key: each looks less far than the one that is shown. */
const LATER_BUDGET = 40_000;

/** Lateness that changes by less is the same to anybody. */
const SAME_SECONDS = 1;

/**
 * What is worse in the plan with the choice, of the songs that have not begun: first who has nothing to
 * play, then what is not ready in time, then what no longer fits its gap.
 *
 * @example
 * laterCost({ show, zeroMs: 0, without: plan, with: plan }) // => { missing: 0, later: [] }
 */
export function laterCost(compared: Compared): LaterCost {
	const missing = newlyMissing(compared);
	return {
		missing: missing.length,
		later: [
			...missingSentences(compared.show, missing),
			...lateSentences(compared),
			...gapSentences(compared),
		],
	};
}

/**
 * Plans what could be, and compares it with the night of `without`; what is refused costs nothing.
 *
 * @example
 * costAgainst({ session, nowMs: 0, plannedZeroMs: 0 }, session)(session).later // => []
 */
export function costAgainst(
	{ session, nowMs, plannedZeroMs }: Moment,
	without: Session,
): (after: Session | null) => LaterCost {
	const planOf = (one: Session) =>
		planCore({ session: one, nowMs, plannedZeroMs }, { budget: LATER_BUDGET }).plan;
	const zeroMs = session.zeroAtMs ?? plannedZeroMs;
	let before: Plan | null = null;
	return (after) => {
		if (after === null) return { missing: 0, later: [] };
		const { show } = after;
		const plan = planOf(after);
		const atMost = laterCost({ show, zeroMs, without: NO_TROUBLE, with: plan });
		// What has nothing wrong is worse than no night: that one need not be planned.
		if (atMost.missing === 0 && atMost.later.length === 0) return atMost;
		before ??= planOf(without);
		return laterCost({ show, zeroMs, without: before, with: plan });
	};
}

function placeOf({ section, player }: { section: Section; player: string }): string {
	return `${section.item} ${section.point} ${player}`;
}

function newlyMissing({ without, with: after }: Compared): readonly Slot[] {
	const isMissing = ({ why, section }: Slot): boolean => why !== null && !section.hasBegun;
	const before = new Set(without.slots.filter(isMissing).map(placeOf));
	return after.slots.filter((slot) => isMissing(slot) && !before.has(placeOf(slot)));
}

/**
 * Who has nothing to play in what, a sentence for each player.
 *
 * @example
 * missingSentences(show, [slots[0]]) // => ['Ash has nothing in Harbour']
 */
export function missingSentences(show: Show, missing: readonly Slot[]): readonly string[] {
	return show.players.flatMap(({ id }) => {
		const titles = missing
			.filter(({ player }) => player === id)
			.map(({ section }) => songTitle(show, section.song));
		return titles.length === 0
			? []
			: [`${playerName(show, id)} has nothing in ${listedWords([...new Set(titles)])}`];
	});
}

/**
 * Titles in a sentence.
 *
 * @example
 * listedWords(['Gravel']) // => 'Gravel'
 * listedWords(['Gravel', 'Pilot']) // => 'Gravel and Pilot'
 * listedWords(['Gravel', 'Pilot', 'Tide', 'Sky']) // => 'Gravel and 3 more'
 */
export function listedWords([first = '', ...more]: readonly string[]): string {
	if (more.length === 0) return first;
	return more.length === 1 ? `${first} and ${more[0]}` : `${first} and ${more.length} more`;
}

function lateSentences({ show, zeroMs, without, with: after }: Compared): readonly string[] {
	const before = new Map(without.work.map((work) => [placeOf(work), lateness(work)]));
	return after.work
		.filter((work) => lateness(work) >= (before.get(placeOf(work)) ?? 0) + SAME_SECONDS)
		.sort((one, other) => one.wantedMs - other.wantedMs)
		.map((work) => {
			const seconds = handOverOf(after, work)?.seconds ?? 0;
			const inHands = minutesSeconds((work.finishMs - zeroMs) / 1000 + seconds);
			const capo = work.capo === 0 ? '' : ` capo ${work.capo}`;
			return `${songTitle(show, work.section.song)} has no ${work.to.name}${capo} until ${inHands}`;
		});
}

function lateness({ slackSeconds }: Work): number {
	return Math.max(0, -slackSeconds);
}

function handOverOf({ handOvers }: Troubled, work: Work): PlannedHandOver | undefined {
	const place = placeOf(work);
	return handOvers.find((one) => placeOf(one) === place);
}

function gapSentences({ show, without, with: after }: Compared): readonly string[] {
	const tight = ({ handOvers }: Troubled) =>
		new Map(
			handOvers.flatMap(({ fits, section }) =>
				fits || section.hasBegun ? [] : [[section.item, section.song] as const],
			),
		);
	const before = tight(without);
	return [...tight(after)]
		.filter(([item]) => !before.has(item))
		.map(([, song]) => `The gap before ${songTitle(show, song)} is too short to change`);
}
