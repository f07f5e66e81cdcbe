// Which instruments could take over from the one a player holds or is about to get, best first by what
// is known now and, where that is asked for, by what each costs later.

import type { InstrumentState } from '../../machines/instrument.ts';
import { holderOf } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import type { Instrument, Show } from '../showfile/show.ts';
import { demandAt } from './demand.ts';
import { instrumentById } from './instrument-by-id.ts';
import type { Plan, PlannedHandOver, Slot, StandIn } from './plan.ts';
import { soundingTuning } from './sounding-tuning.ts';
import type { Sound, TakeOver } from './take-over.ts';
import { takeOver } from './take-over.ts';
import { whyAbsent } from './why-unplayable.ts';

export type StandInsAsked = {
	readonly session: Session;
	readonly plan: Plan;
	readonly nowMs: number;
	readonly player: string;
	/** What is to be replaced; left out, what they hold during a song, else what they get next. */
	readonly instrument?: string;
};

/**
 * Every instrument that could take over, best first: sounds right as it stands and is ready; then
 * ready soonest; then alike; then not needed elsewhere before the other is restrung; then kept as a
 * spare; then by its place on the rack. What is meant for somebody else comes last. Empty when there is
 * nothing to replace. What each costs later is left aside, since that takes a plan each.
 *
 * @example
 * standIns({ session, plan, nowMs: 60000, player: 'ash', instrument: 'A1' }).map(({ instrument }) => instrument) // => ['S1', 'A3', 'A2', 'A4', 'B1', 'B3']
 */
export function standIns(asked: StandInsAsked): readonly StandIn[] {
	const rack = rackNow(asked);
	return rack === null ? [] : rankStandIns(rack);
}

/**
 * The rack as it is, with what is to be heard from the player; null when there is nothing to replace.
 *
 * @example
 * rackNow({ session, plan, nowMs: 60000, player: 'ash', instrument: 'A1' }).sound.replaced.id // => 'A1'
 */
export function rackNow(asked: StandInsAsked): Rack | null {
	const { session, plan, nowMs, player } = asked;
	const sound = soundAsked(asked);
	if (sound === null) return null;
	return {
		show: session.show,
		instruments: session.instruments,
		holder: (id) => holderOf(session, id),
		handOvers: plan.handOvers,
		nowMs,
		player,
		sound,
	};
}

/** What taking one of them costs later. */
export type LaterCost = {
	/** Slots that become missing. */
	readonly missing: number;
	/** All that changes for the worse, a sentence each. */
	readonly later: readonly string[];
};

/** So many of the best are planned with: nobody reads further in a hurry, and each takes a plan. */
const HANDFUL = 5;

export type Rack = {
	readonly show: Show;
	readonly instruments: Readonly<Record<string, InstrumentState>>;
	/** Whose hands it is in, or about to be in; a player's id. */
	readonly holder: (instrument: string) => string | null;
	readonly handOvers: readonly PlannedHandOver[];
	readonly nowMs: number;
	readonly player: string;
	readonly sound: Sound;
};

/**
 * The same from any rack: as it is, or as a plan expects it to be. With `costOf` the first handful say
 * what they cost later, and of two that sound right as they stand, or of two that do not, what leaves
 * fewer slots missing comes first. With `isBestEnough` costs are asked for until it is known what comes
 * first; the others then stand as they would without.
 *
 * @example
 * rankStandIns({ ...rack, player: 'ash', sound: soundOfA1 })[0].instrument // => 'S1'
 */
export function rankStandIns(
	rack: Rack,
	costOf: ((one: StandIn) => LaterCost) | null = null,
	isBestEnough = false,
): readonly StandIn[] {
	const { show, sound } = rack;
	const ranked = show.instruments
		.filter(({ id }) => id !== sound.replaced?.id)
		.flatMap((instrument): readonly Ranked[] => {
			const found = offer(rack, instrument);
			if (found === null) return [];
			const { isReady: _, ...standIn } = found;
			return [{ standIn, ranks: ranksOf(rack, instrument, found) }];
		})
		.sort(compareRanks);
	if (costOf === null) return ranked.map(({ standIn }) => standIn);
	const [owner, ready] = ranked[0]?.ranks ?? [];
	let least = Number.POSITIVE_INFINITY;
	const first = ranked.slice(0, HANDFUL).map((one): Ranked => {
		const [own = 0, asItStands = 0, ...rest] = one.ranks;
		const isBehind = own !== owner || asItStands !== ready || least === 0;
		if (isBestEnough && isBehind) return one;
		const { missing, later } = costOf(one.standIn);
		least = Math.min(least, missing);
		return { standIn: { ...one.standIn, later }, ranks: [own, asItStands, missing, ...rest] };
	});
	const best = first.find(({ ranks }) => ranks[2] === least);
	const others = first.filter((one) => one !== best);
	const inOrder = isBestEnough ? [...(best ? [best] : []), ...others] : first.sort(compareRanks);
	return [...inOrder, ...ranked.slice(HANDFUL)].map(({ standIn }) => standIn);
}

type Ranked = { readonly standIn: StandIn; readonly ranks: readonly number[] };

function offer(rack: Rack, instrument: Instrument): TakeOver | null {
	const { show, nowMs, player, sound } = rack;
	const state = rack.instruments[instrument.id];
	if (state === undefined || whyAbsent(instrument, state) !== null) return null;
	if (state.context.stringsDown.length > 0) return null;
	const holder = rack.holder(instrument.id);
	if (holder !== null && holder !== player) return null;
	return takeOver({ show, instrument, state, isHeld: holder === player, nowMs }, sound);
}

/** Smaller is better, first figures first. */
function ranksOf(rack: Rack, instrument: Instrument, found: TakeOver): readonly number[] {
	const { player, sound } = rack;
	const isForOther = instrument.for !== null && !instrument.for.includes(player);
	return [
		isForOther ? (instrument.spare ? 1 : 2) : 0,
		found.isReady ? 0 : 1,
		found.readyInSeconds,
		differences(instrument, sound),
		isNeededSoon(rack, instrument) ? 1 : 0,
		instrument.spare ? 0 : 1,
		slotPlace(instrument.slot),
	];
}

function compareRanks({ ranks }: Ranked, { ranks: others }: Ranked): number {
	const index = ranks.findIndex((rank, at) => rank !== others[at]);
	return index < 0 ? 0 : (ranks[index] ?? 0) - (others[index] ?? 0);
}

/** How unlike it is: another kind first of all, then bridge, scale and each feature that it lacks. */
function differences(instrument: Instrument, { kind, replaced }: Sound): number {
	const otherKind = instrument.kind === kind ? 0 : 100;
	if (replaced === null) return otherKind;
	const { bridge, scaleMillimetres, features } = replaced;
	const hasOtherScale =
		scaleMillimetres !== null &&
		instrument.scaleMillimetres !== null &&
		Math.abs(instrument.scaleMillimetres - scaleMillimetres) > 1;
	return (
		otherKind +
		(instrument.bridge === bridge ? 0 : 1) +
		(hasOtherScale ? 1 : 0) +
		features.filter((feature) => !instrument.features.includes(feature)).length
	);
}

/** Whether somebody is to get it before what it replaces could be restrung. */
function isNeededSoon({ handOvers, player, nowMs, sound }: Rack, { id }: Instrument): boolean {
	const awayMs = (sound.replaced?.times.restring ?? 0) * 1000;
	return handOvers.some(
		(one) =>
			one.instrument === id &&
			one.player !== player &&
			(one.section.hasBegun || one.section.startMs > nowMs) &&
			one.wantedMs < nowMs + awayMs,
	);
}

/** Digits before letters; what has no place last. */
function slotPlace(slot: string | null): number {
	return slot === null ? Number.MAX_SAFE_INTEGER : (slot.codePointAt(0) ?? 0);
}

/** What is to be heard from this player, and what would be replaced. */
function soundAsked({ session, plan, player, instrument }: StandInsAsked): Sound | null {
	const held = session.players[player]?.holds ?? null;
	const slots = plan.slots.filter((slot) => slot.player === player);
	const present = slots.find(({ section }) => section.hasBegun) ?? null;
	const isForHeld =
		instrument === undefined
			? session.phase.value === 'song' && held !== null
			: instrument === held;
	// During a song with empty hands, what should be in them comes before what is next.
	const asked = slots.find((one) => one.instrument === instrument || one.named === instrument);
	const slot = isForHeld ? present : ((instrument === undefined ? slots[0] : asked) ?? null);
	const replaced = instrument ?? (isForHeld ? held : (slot?.instrument ?? slot?.named ?? null));
	return soundOf(session, slot, replaced);
}

function soundOf(session: Session, slot: Slot | null, replaced: string | null): Sound | null {
	const instruments = instrumentById(session.show);
	const instrument = replaced === null ? null : (instruments.get(replaced) ?? null);
	if (slot !== null) return soundOfSlot(session.show, slot, instrument ?? undefined);
	const context = replaced === null ? undefined : session.instruments[replaced]?.context;
	if (instrument === null || context === undefined) return null;
	return {
		tuning: soundingTuning(context, instrument.kind),
		kind: instrument.kind,
		replaced: instrument,
	};
}

/**
 * What is to be heard in a slot: by default in place of the instrument that stands there.
 *
 * @example
 * soundOfSlot(show, slots[0]).tuning.name // => 'E standard'
 */
export function soundOfSlot(show: Show, slot: Slot, replaced?: Instrument): Sound | null {
	const instruments = instrumentById(show);
	const own = instruments.get(slot.instrument ?? slot.named ?? '') ?? null;
	const kind = own?.kind ?? kindNeeded(show, slot);
	if (kind === null) return null;
	return { tuning: soundingTuning(slot, kind), kind, replaced: replaced ?? own };
}

function kindNeeded(show: Show, { section, player }: Slot): Sound['kind'] | null {
	const song = show.songs.find(({ id }) => id === section.song);
	if (song === undefined) return null;
	const demand = demandAt(show, { song, point: section.point, player });
	return demand.kind === 'needs' ? demand.part.instrumentKind : null;
}
