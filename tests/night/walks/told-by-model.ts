// What the enumeration from the live state has for each player next: the first hand-over, and what they stay on.

import type { Night } from '../../../src/night/night.ts';
import { nightSteps } from '../../../src/report/night-steps.ts';
import { LIVE_CRITERIA } from '../../plan/independent/cost.ts';
import { type LiveNight, liveFromSession } from '../../plan/independent/live-from-session.ts';
import { type Played, slotKey } from '../../plan/independent/live-state.ts';
import { type Best, type Plan, search, TooManySteps } from '../../plan/independent/search.ts';
import { PLANNED_ZERO_MS } from './walked-night.ts';

const MOST_PLANS = 40;
const MOST_STEPS = 30_000;

export type Next = {
	readonly song: string;
	readonly instrument: string;
	readonly open: string;
	readonly capo: number;
	readonly for: string | null;
};

export type Stays = Omit<Next, 'open'>;

/** Undefined where the best plans differ in it, `unasked` where the player's hands are left alone or nothing is to be had. */
export type ToldByModel = {
	readonly best: Best;
	readonly next: Readonly<Record<string, Next | null | undefined>>;
	readonly stays: Readonly<Record<string, Stays | null | 'unasked' | undefined>>;
};

/** The night as the model reads it. */
export function liveOf(night: Night): LiveNight {
	const session = night.session();
	const zeroMs = session.zeroAtMs ?? PLANNED_ZERO_MS;
	const secondsOf = (ms: number): number => (ms - zeroMs) / 1000;
	// Nothing has to be in hands for an interval to begin.
	const intervals = nightSteps(session.show, night.records()).steps.flatMap(
		({ entry, before, after }) =>
			after.phase.value === 'interval' && before.phase.value !== 'interval' ? [entry.at] : [],
	);
	return liveFromSession({
		session,
		secondsOf,
		now: secondsOf(night.nowMs()),
		plannedZero: secondsOf(PLANNED_ZERO_MS),
		intervalBeganMs: Math.max(-Infinity, ...intervals),
		restrungFor: restrungIn(night),
	});
}

/**
 * By which section strings that are down are on again: which use a restring is promised to is held against the
 * model elsewhere, here the choice that is made with it.
 */
function restrungIn(night: Night): Readonly<Record<string, number>> {
	const { work, sections } = night.plan();
	const all = work.filter(({ job }) => job === 'restring');
	return Object.fromEntries(
		all.map(({ instrument, section }) => [instrument, sections.indexOf(section)]),
	);
}

/** What the model tells each player; null where enumerating takes too long. */
export function toldByModel(live: LiveNight): ToldByModel | null {
	let best: Best;
	try {
		best = search(live.state, {
			criteria: LIVE_CRITERIA,
			mostPlans: MOST_PLANS,
			mostSteps: MOST_STEPS,
		});
	} catch (error) {
		if (error instanceof TooManySteps) return null;
		throw error;
	}
	const isWhole = best.plans.length === best.count && best.count < MOST_PLANS;
	const agreed = <Said>(saidBy: (plan: Plan, player: string) => Said) =>
		Object.fromEntries(
			live.state.players.map(({ id }) => {
				const all = best.plans.map((plan) => saidBy(plan, id));
				const isSame = all.every((one) => JSON.stringify(one) === JSON.stringify(all[0]));
				return [id, isWhole && isSame ? all[0] : undefined];
			}),
		);
	return {
		best,
		next: agreed((plan, player) => nextOf(live, plan, player)),
		stays: agreed((plan, player) => staysOf(live, plan, player)),
	};
}

function namedFor({ asked, placed }: LiveNight, section: number, player: string, played: Played) {
	const demand = asked[slotKey(placed[section]!.key, player)]!.demand;
	return demand.kind === 'named' && demand.instrument !== played.instrument
		? demand.instrument
		: null;
}

function nextOf(live: LiveNight, { slots }: Plan, player: string): Next | null {
	for (const { section, player: who, isHandOver, played } of slots) {
		if (who !== player || !isHandOver || played === null) continue;
		return {
			song: live.placed[section]!.song.id,
			instrument: played.instrument,
			open: played.open.join(' '),
			capo: played.capo,
			for: namedFor(live, section, player, played),
		};
	}
	return null;
}

/** What is kept for the next song that is not on: another instrument than asked, or with the capo moved. */
function staysOf(live: LiveNight, { slots }: Plan, player: string): Stays | null | 'unasked' {
	const { placed, state } = live;
	const next = placed.findIndex(({ point, isOn }) => point === 0 && !isOn);
	if (next < 0) return null;
	if (live.isAlone.has(slotKey(placed[next]!.key, player))) return 'unasked';
	const mine = slots.filter((one) => one.player === player);
	const slot = mine.find(({ section }) => section === next)!;
	const { played } = slot;
	const before =
		mine.findLast((one) => one.section < next && one.played !== null)?.played ??
		state.players.find(({ id }) => id === player)!.holds;
	// The model counts it as missing though what stays in hands may sound so.
	if (slot.how === 'missing') return 'unasked';
	if (played === null || before === null || slot.isHandOver) return null;
	// A song that does not name this player asks for nothing else while they keep what sounds so.
	const { isAsAbove } = live.asked[slotKey(placed[next]!.key, player)]!;
	const forNamed = isAsAbove ? null : namedFor(live, next, player, played);
	if (forNamed === null && before.capo === played.capo) return null;
	const { instrument, capo } = played;
	return { song: placed[next]!.song.id, instrument, capo, for: forNamed };
}
