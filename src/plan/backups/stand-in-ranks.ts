// By what stand-ins are put in order: a figure for each criterion, smaller is better, the first first; and why
// one is where it is, said only where its own reasons do not say it: they are read together, in a hurry.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { NightMs } from '../../journal/entry.ts';
import type { Instrument, Show } from '../../showfile/show.ts';
import type { Later, PlannedHandOver, StandInReason } from '../plan.ts';
import type { Sound, TakeOver } from './take-over.ts';

/** What stand-ins are looked for on. */
export type Rack = {
	readonly show: Show;
	readonly instruments: Readonly<Record<string, InstrumentState>>;
	/** Whose hands it is in, or about to be in; a player's id. */
	readonly holder: (instrument: string) => string | null;
	readonly handOvers: readonly PlannedHandOver[];
	readonly nowMs: NightMs;
	/** When the song ends in which it is wanted at once; null where none is on. */
	readonly endMs: NightMs | null;
	readonly player: string;
	readonly sound: Sound;
	/** What the song itself names; null for nothing. */
	readonly asked: string | null;
};

/** Of another kind is more unlike than anything that one of the same kind may lack. */
const OTHER_KIND = 100;

/** In the order in which they decide. */
const CRITERIA = [
	'afterEnd',
	'owner',
	'asItStands',
	'missing',
	'substituted',
	'seconds',
	'notAsked',
	'unlike',
	'neededSoon',
	'notKept',
	'place',
] as const;

export type Criterion = (typeof CRITERIA)[number];

export type Ranks = Readonly<Record<Criterion, number>>;

export type Ranked = {
	readonly instrument: Instrument;
	readonly found: TakeOver;
	readonly later: readonly Later[];
	readonly ranks: Ranks;
};

/**
 * What is known of it now; what it leaves missing later is for others to find out.
 *
 * @example
 * ranksOf({ ...rack, player: 'ash', sound: soundOfA1 }, instruments.A3, { isReady: true, readyInSeconds: 10 }).unlike // => 1
 */
export function ranksOf(
	rack: Rack,
	instrument: Instrument,
	found: Pick<TakeOver, 'isReady' | 'readyInSeconds'>,
): Ranks {
	const isForOther = instrument.for !== null && !instrument.for.includes(rack.player);
	const inHandsMs = rack.nowMs + found.readyInSeconds * 1000;
	return {
		afterEnd: rack.endMs !== null && inHandsMs > rack.endMs ? 1 : 0,
		owner: isForOther ? (instrument.spare ? 1 : 2) : 0,
		asItStands: found.isReady ? 0 : 1,
		missing: 0,
		substituted: 0,
		seconds: found.readyInSeconds,
		// In place of what was in hands by mistake.
		notAsked: instrument.id === rack.asked ? 0 : 1,
		unlike:
			(instrument.kind === rack.sound.kind ? 0 : OTHER_KIND) +
			differences(instrument, rack.sound).length,
		neededSoon: neededSoonBy(rack, instrument) === null ? 0 : 1,
		notKept: instrument.spare ? 0 : 1,
		place: slotPlace(instrument.slot),
	};
}

/** What puts one before the other; null where nothing does. */
function decider(one: Ranks, other: Ranks): Criterion | null {
	return CRITERIA.find((criterion) => one[criterion] !== other[criterion]) ?? null;
}

/**
 * Negative when the first is the better, 0 when nothing tells them apart.
 *
 * @example
 * compareRanked({ ranks: { ...ranks, seconds: 10 } }, { ranks: { ...ranks, seconds: 55 } }) // => -45
 */
export function compareRanked(
	{ ranks: one }: Pick<Ranked, 'ranks'>,
	{ ranks: other }: Pick<Ranked, 'ranks'>,
): number {
	const by = decider(one, other);
	return by === null ? 0 : one[by] - other[by];
}

/** In what it is unlike what it replaces: bridge, scale, each feature that it lacks. */
function differences(
	instrument: Instrument,
	{ replaced }: Pick<Sound, 'replaced'>,
): readonly StandInReason[] {
	if (replaced === null) return [];
	const { bridge, scaleMillimetres, features } = replaced;
	const hasOtherScale =
		scaleMillimetres !== null &&
		instrument.scaleMillimetres !== null &&
		Math.abs(instrument.scaleMillimetres - scaleMillimetres) > 1;
	return [
		...(instrument.bridge === bridge
			? []
			: [{ code: 'bridge', bridge: instrument.bridge } as const]),
		...(hasOtherScale ? [{ code: 'other-scale' } as const] : []),
		...features
			.filter((feature) => !instrument.features.includes(feature))
			.map((feature) => ({ code: 'no-feature', feature }) as const),
	];
}

/** Who is to get it before what it replaces could be restrung; a player's id. */
function neededSoonBy(
	{ handOvers, player, nowMs, sound }: Omit<Rack, 'show' | 'instruments' | 'holder' | 'endMs'>,
	{ id }: Pick<Instrument, 'id'>,
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

export type Among = {
	/** Best first. */
	readonly ranked: readonly Ranked[];
	readonly rack: Rack;
};

/**
 * Why it would do; the last one is what put it there, where that has to be said.
 *
 * @example
 * whyInOrder(rankedS1, { ranked: [rankedS1], rack }) // => [{ code: 'same-tuning' }, { code: 'ready' }]
 */
export function whyInOrder(one: Ranked, among: Among): readonly StandInReason[] {
	const { why } = one.found;
	const says = (code: StandInReason['code']) => why.some((found) => found.code === code);
	const reason = reasonOf(one, among);
	if (reason === null || says(reason.code)) return why;
	const all = [...why, reason];
	if (all.length <= MOST_REASONS) return all;
	// That it sounds the same is heard anyway; what there is to do is not.
	return says('ready') ? all.slice(1) : [...all.slice(0, 1), ...all.slice(2)];
}

function reasonOf(one: Ranked, { ranked, rack }: Among): StandInReason | null {
	const { instrument } = one;
	if (one.ranks.owner > 0) return { code: 'meant-for', players: instrument.for ?? [] };
	const place = ranked.indexOf(one);
	const behind = ranked.slice(0, place).map((other) => decider(one.ranks, other.ranks));
	if (behind.includes('unlike')) {
		const isSaid = instrument.kind !== rack.sound.kind;
		return isSaid ? null : (differences(instrument, rack.sound)[0] ?? null);
	}
	if (behind.includes('neededSoon')) {
		const player = neededSoonBy(rack, instrument);
		return player === null ? null : { code: 'needed-by', player };
	}
	return null;
}
