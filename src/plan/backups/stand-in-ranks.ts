// By what stand-ins are put in order: a figure for each criterion, smaller is better, the first first; and why
// one is where it is, said only where its own reasons do not say it: they are read together, in a hurry.

import type { Instrument } from '../../showfile/show.ts';
import { mayHave } from '../demand/options.ts';
import type { Later, StandInReason } from '../plan.ts';
import type { Rack, TakeOver } from './take-over.ts';

/** Of another kind is more unlike than anything that one of the same kind may lack. */
const OTHER_KIND = 100;

/** What is known before anybody asks what it costs later. */
export const BEFORE_COST = ['afterEnd', 'owner', 'asItStands'] as const;

/** In the order in which they decide. */
const CRITERIA = [
	...BEFORE_COST,
	'later',
	'seconds',
	'notAsked',
	'unlike',
	'neededSoon',
	'notKept',
	'place',
] as const;

type Criterion = (typeof CRITERIA)[number];

type Ranks = Readonly<Record<Criterion, number>>;

export type Ranked = TakeOver & {
	readonly later: readonly Later[];
	readonly ranks: Ranks;
};

/**
 * What is known of it now; what it leaves missing later is for others to find out.
 *
 * @example
 * ranksOf({ ...rack, player: 'ash', sound: soundOfA1 }, { instrument: instruments.A3, isReady: true, readyInSeconds: 10 }).unlike // => 1
 */
export function ranksOf(
	rack: Rack,
	{ instrument, isReady, readyInSeconds }: Omit<TakeOver, 'hand' | 'why'>,
): Ranks {
	const inHandsMs = rack.nowMs + readyInSeconds * 1000;
	return {
		afterEnd: rack.endMs !== null && inHandsMs > rack.endMs ? 1 : 0,
		owner: mayHave(instrument, rack.player) ? 0 : instrument.spare ? 1 : 2,
		asItStands: isReady ? 0 : 1,
		later: 0,
		seconds: readyInSeconds,
		// In place of what was in hands by mistake.
		notAsked: instrument.id === rack.asked ? 0 : 1,
		unlike:
			(instrument.kind === rack.sound.kind ? 0 : OTHER_KIND) + differences(instrument, rack).length,
		neededSoon: neededSoonBy(rack, instrument) === null ? 0 : 1,
		notKept: instrument.spare ? 0 : 1,
		place: slotPlace(instrument.slot),
	};
}

/** What puts one before the other; null where nothing does. */
function decider(one: Ranked, other: Ranked): Criterion | null {
	return CRITERIA.find((criterion) => one.ranks[criterion] !== other.ranks[criterion]) ?? null;
}

/**
 * Negative when the first is the better, 0 when nothing tells them apart.
 *
 * @example
 * compareRanked({ ranks: { ...ranks, seconds: 10 } }, { ranks: { ...ranks, seconds: 55 } }) // => -45
 */
export function compareRanked(one: Ranked, other: Ranked): number {
	const by = decider(one, other);
	return by === null ? 0 : one.ranks[by] - other.ranks[by];
}

/** In what it is unlike what it replaces: bridge, scale, each feature that it lacks. */
function differences(
	instrument: Instrument,
	{ sound: { replaced } }: Rack,
): readonly StandInReason[] {
	if (replaced === null) return [];
	const { bridge, scaleMillimetres, features } = replaced;
	const hasOtherScale =
		scaleMillimetres !== null &&
		instrument.scaleMillimetres !== null &&
		Math.abs(instrument.scaleMillimetres - scaleMillimetres) > 1;
	const lacking = features.filter((feature) => !instrument.features.includes(feature));
	const all: readonly (StandInReason | false)[] = [
		instrument.bridge !== bridge && { code: 'bridge', bridge: instrument.bridge },
		hasOtherScale && { code: 'other-scale' },
		...lacking.map((feature) => ({ code: 'no-feature', feature }) as const),
	];
	return all.filter((one) => one !== false);
}

/** Who is to get it before what it replaces could be restrung; a player's id. */
function neededSoonBy(
	{ handOvers, player, nowMs, sound }: Rack,
	{ id }: Instrument,
): string | null {
	const awayMs = (sound.replaced?.times.restring ?? 0) * 1000;
	const next = handOvers.find(
		(one) =>
			one.instrument === id &&
			one.player !== player &&
			(one.section.hasBegun || one.section.startMs > nowMs) &&
			one.wantedMs < nowMs + awayMs,
	);
	return next?.player ?? null;
}

/** Digits before letters; what has no place last. */
function slotPlace(slot: string | null): number {
	return slot === null ? Number.MAX_SAFE_INTEGER : (slot.codePointAt(0) ?? 0);
}

/** More of them are not read in a hurry. */
const MOST_REASONS = 3;

/**
 * Why it would do; the last one is what put it there, where that has to be said.
 *
 * @example
 * whyInOrder(rankedS1, { ranked: [rankedS1], rack }) // => [{ code: 'same-tuning' }, { code: 'ready' }]
 */
export function whyInOrder(
	one: Ranked,
	{ ranked, rack }: { readonly ranked: readonly Ranked[]; readonly rack: Rack },
): readonly StandInReason[] {
	const { why } = one;
	const says = (code: StandInReason['code']) => why.some((reason) => reason.code === code);
	const better = ranked.slice(0, ranked.indexOf(one));
	const reason = reasonOf(one, better, rack);
	if (reason === null || says(reason.code)) return why;
	const all = [...why, reason];
	if (all.length <= MOST_REASONS) return all;
	// That it sounds the same is heard anyway; what there is to do is not.
	return says('ready') ? all.slice(1) : [...all.slice(0, 1), ...all.slice(2)];
}

function reasonOf(one: Ranked, better: readonly Ranked[], rack: Rack): StandInReason | null {
	const { instrument } = one;
	if (one.ranks.owner > 0) return { code: 'meant-for', players: instrument.for ?? [] };
	const behind = better.map((other) => decider(one, other));
	if (behind.includes('unlike')) {
		// Another kind is among its own reasons.
		if (instrument.kind !== rack.sound.kind) return null;
		return differences(instrument, rack)[0] ?? null;
	}
	const player = behind.includes('neededSoon') ? neededSoonBy(rack, instrument) : null;
	return player === null ? null : { code: 'needed-by', player };
}
