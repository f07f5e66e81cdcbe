// What a choice costs later: two plans of one night, with it and without, told apart. Only what becomes
// worse is said; what was bad already is no reason against the choice.

import { once } from '../../base/once.ts';
import { tenths } from '../../base/show-clock.ts';
import type { NightMs } from '../../journal/entry.ts';
import type { Session } from '../../session/session.ts';
import type { Show } from '../../showfile/show.ts';
import type { Budget } from '../choice/beam-search.ts';
import { demandOf } from '../demand/demand.ts';
import type { Moment } from '../demand/sections-ahead.ts';
import type { Later, Plan, Section, Slot, Work } from '../plan.ts';
import { planCore } from '../timed-choice/plan-core.ts';

/** What a choice costs later. */
export type LaterCost = {
	/** Slots that become missing. */
	readonly missing: number;
	/** Hand-overs of what comes to stand in for what is named. */
	readonly substituted: number;
	/** All that changes for the worse. */
	readonly later: readonly Later[];
};

type Compared = {
	readonly show: Show;
	/** The first song's start, from which marks count. */
	readonly zeroMs: NightMs;
	readonly without: Troubled;
	readonly with: Troubled;
};

/** What can be wrong with a plan stands there. */
export type Troubled = Pick<Plan, 'slots' | 'handOvers' | 'work'>;

const NO_TROUBLE: Troubled = { slots: [], handOvers: [], work: [] };

/** A handful of plans answer one key: each looks less far than the one that is shown. */
export const LATER_BUDGET = 20_000;

/** Lateness that changes by less is the same to anybody. */
const SAME_SECONDS = 1;

/**
 * What is worse in the plan with the choice, of the songs that have not begun: first who has nothing to
 * play, then who has a backup, then what is not ready in time, then what no longer fits its gap.
 *
 * @example
 * laterCost({ show, zeroMs: 0, without: plan, with: plan }) // => { missing: 0, substituted: 0, later: [] }
 */
export function laterCost(compared: Compared): LaterCost {
	const missing = newly(compared, ({ isMissing }) => isMissing);
	const substituted = newly(compared, (slot) => slot.for !== null && slot.isHandOver);
	return {
		missing: missing.length,
		substituted: substituted.length,
		later: [
			...byPlayer(compared.show, 'missing', missing),
			...byPlayer(compared.show, 'backup', substituted),
			...lateWork(compared),
			...tightGaps(compared),
		],
	};
}

/**
 * Plans what could be, and compares it with the night of `without`; what is refused costs nothing. `from`: what
 * all these plans are made from together; left out, each may use its own.
 *
 * @example
 * costAgainst({ session, nowMs: 0, plannedZeroMs: 0 }, { without: session })(session).later // => []
 */
export function costAgainst(
	{ session, nowMs, plannedZeroMs }: Moment,
	{ without, from }: { readonly without: Session; readonly from?: Budget },
): (after: Session | null) => LaterCost {
	const how = { budget: LATER_BUDGET, ...(from === undefined ? {} : { from }) };
	const planOf = (one: Session) => planCore({ session: one, nowMs, plannedZeroMs }, how).plan;
	const zeroMs = session.zeroAtMs ?? plannedZeroMs;
	const before = once(() => planOf(without));
	return (after) => {
		if (after === null) return { missing: 0, substituted: 0, later: [] };
		const { show } = after;
		const plan = planOf(after);
		const atMost = laterCost({ show, zeroMs, without: NO_TROUBLE, with: plan });
		// What has nothing wrong is worse than no night: that one need not be planned.
		if (atMost.later.length === 0) return atMost;
		return laterCost({ show, zeroMs, without: before(), with: plan });
	};
}

function placeOf({ section, player }: { section: Section; player: string }): string {
	return `${section.item} ${section.point} ${player}`;
}

/** The slots of which this has come to be true, in songs that have not begun. */
function newly({ without, with: after }: Compared, isSo: (slot: Slot) => boolean): readonly Slot[] {
	const isAhead = (slot: Slot): boolean => isSo(slot) && !slot.section.hasBegun;
	const before = new Set(without.slots.filter(isAhead).map(placeOf));
	return after.slots.filter((slot) => isAhead(slot) && !before.has(placeOf(slot)));
}

type InSongs = Extract<Later, { code: 'missing' | 'backup' }>;

/**
 * The songs in which each player has nothing to play, or a backup.
 *
 * @example
 * byPlayer(show, 'missing', [slots[0]]) // => [{ code: 'missing', player: 'ash', songs: ['harbour'] }]
 */
export function byPlayer(
	show: Show,
	code: 'missing' | 'backup',
	slots: readonly Slot[],
): readonly InSongs[] {
	return show.players.flatMap(({ id }): readonly InSongs[] => {
		const songs = slots.filter(({ player }) => player === id).map(({ section }) => section.song);
		return songs.length === 0 ? [] : [{ code, player: id, songs: [...new Set(songs)] }];
	});
}

function lateWork({ show, zeroMs, without, with: after }: Compared): readonly Later[] {
	const lateness = ({ slackSeconds }: Work): number => Math.max(0, -slackSeconds);
	const before = new Map(without.work.map((work) => [placeOf(work), lateness(work)]));
	const seconds = new Map(after.handOvers.map((one) => [placeOf(one), one.seconds]));
	return after.work
		.filter((work) => lateness(work) >= (before.get(placeOf(work)) ?? 0) + SAME_SECONDS)
		.sort((one, other) => one.wantedMs - other.wantedMs)
		.map((work): Later => {
			const { section, instrument, to, capo, finishMs } = work;
			const handing = seconds.get(placeOf(work)) ?? 0;
			const inHandsSeconds = tenths((finishMs - zeroMs) / 1000 + handing);
			const { song } = section;
			const wanted = wantedOf(show, work) ?? { instrument, tuning: to.name, capo };
			return { code: 'late', song, ...wanted, inHandsSeconds };
		});
}

/** What the song itself names for them: what stands in may be set up in another way, which nobody asked for. */
function wantedOf(show: Show, { section, player }: Work) {
	const part = show.songs.find(({ id }) => id === section.song)?.parts[player] ?? null;
	const demand = demandOf(show, { part });
	if (demand.kind !== 'named') return null;
	return { instrument: demand.instrument.id, tuning: demand.tuning.name, capo: demand.capo };
}

function tightGaps({ without, with: after }: Compared): readonly Later[] {
	const tight = ({ handOvers }: Troubled) => {
		const unfit = handOvers.filter(({ fits, section }) => !fits && !section.hasBegun);
		return new Map(unfit.map(({ section }) => [section.item, section.song]));
	};
	const before = tight(without);
	return [...tight(after)]
		.filter(([item]) => !before.has(item))
		.map(([, song]) => ({ code: 'tight-gap', song }));
}
