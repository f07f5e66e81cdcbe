// Which instruments could take over from the one a player holds or is about to get, best first by what
// is known now and, where that is asked for, by what each costs later.

import { holderOf, openBreakOf } from '../../session/find.ts';
import type { Session } from '../../session/session.ts';
import type { Instrument, Show } from '../../showfile/show.ts';
import { songEndMs } from '../demand/first-song.ts';
import type { Hand } from '../demand/hand.ts';
import { instrumentById } from '../demand/instrument-by-id.ts';
import { soundingTuning } from '../demand/same-pitches.ts';
import type { Later, Plan, Section, Slot, StandIn } from '../plan.ts';
import type { LaterCost } from '../what-if/later-cost.ts';
import type { Ranked } from './stand-in-ranks.ts';
import { BEFORE_COST, compareRanked, ranksOf, whyInOrder } from './stand-in-ranks.ts';
import type { Rack, Sound } from './take-over.ts';
import { takeOvers } from './take-over.ts';

export type StandInsAsked = {
	readonly session: Session;
	readonly plan: Plan;
	readonly nowMs: number;
	readonly player: string;
	/** What is to be replaced; left out, what they hold during a song, else what they get next. */
	readonly instrument?: string;
	/** Where it is to be replaced; left out, where it is played first. */
	readonly section?: Section;
};

/**
 * Every instrument that could take over, best first: in hands before the song that is on ends; sounds right as
 * it stands and is ready; then
 * ready soonest; then named by the song; then alike; then not needed elsewhere before the other is restrung; then kept as a
 * spare; then by its place on the rack. What is meant for somebody else comes last. Empty when there is
 * nothing to replace. What each costs later is left aside, since that takes a plan each.
 *
 * @example
 * standIns({ session, plan, nowMs: 60000, player: 'ash', instrument: 'A1' }).map(({ instrument }) => instrument) // => ['S1', 'A3', 'A2', 'A4', 'B3']
 */
export function standIns(asked: StandInsAsked): readonly StandIn[] {
	const rack = rackNow(asked);
	return rack === null ? [] : rankStandIns(rack);
}

/**
 * The first that could take over where a slot has nothing: of another kind, or meant for somebody else, since
 * the plan takes neither of its own accord. Null where nothing could.
 *
 * @example
 * backupOfSlot({ session, plan, nowMs: 0 }, plan.slots[0]).instrument // => 'S1'
 */
export function backupOfSlot(
	{ session, plan, nowMs }: Omit<StandInsAsked, 'player' | 'instrument' | 'section'>,
	{ player, named, section }: Slot,
): StandIn | null {
	const instrument = named === null ? {} : { instrument: named };
	return standIns({ session, plan, nowMs, player, section, ...instrument })[0] ?? null;
}

/**
 * The rack as it is, with what is to be heard from the player; null when there is nothing to replace.
 *
 * @example
 * rackNow({ session, plan, nowMs: 60000, player: 'ash', instrument: 'A1' }).sound.replaced.id // => 'A1'
 */
export function rackNow(asked: StandInsAsked): Replaceable | null {
	const { session, plan, nowMs, player } = asked;
	const { slot, sound } = soundAsked(asked);
	if (sound === null) return null;
	const theirs = new Map([...givenToOthers(plan, slot), ...offeredBefore(asked)]);
	const isOn = slot?.section.hasBegun ?? false;
	return {
		slot,
		show: session.show,
		instruments: session.instruments,
		holder: (id) => theirs.get(id) ?? holderOf(session, id),
		handOvers: plan.handOvers,
		nowMs,
		endMs: isOn ? songEndMs(plan.sections) : null,
		player,
		sound,
		asked: slot?.asked ?? null,
	};
}

/** Who else is to have what where this is to be played: it is theirs then, and what they are just taking is theirs already. Once for the whole rack: a night has thousands of slots. */
function givenToOthers({ slots, handOvers }: Plan, of: Slot | null): readonly Given[] {
	const isOn = of?.section.hasBegun === true;
	const all = isOn ? handOvers.filter(({ section }) => section.hasBegun) : slots;
	return all.flatMap(({ section, player, instrument }): readonly Given[] => {
		const isTheirs = (isOn || section === of?.section) && player !== of?.player;
		return isTheirs && instrument !== null ? [[instrument, player]] : [];
	});
}

type Given = readonly [instrument: string, player: string];

/** Of two breaks that wait for an answer the later one is asked first: what comes first there is not offered for the other. */
function offeredBefore({ session, plan, nowMs, player }: StandInsAsked): readonly Given[] {
	const own = session.incidents.findLastIndex((one) => one.isOpen && one.player === player);
	if (own < 0) return [];
	return session.incidents.slice(own + 1).flatMap(({ isOpen, player: other }): readonly Given[] => {
		if (!isOpen || other === null) return [];
		const [best] = standIns({ session, plan, nowMs, player: other });
		return best === undefined ? [] : [[best.instrument, other]];
	});
}

/** So many of the best are planned with: nobody reads further in a hurry, and each takes a plan. */
const HANDFUL = 5;

/** What is said of a cost that there was no time for. */
export const UNKNOWN: readonly Later[] = [{ code: 'unknown' }];

/** `slot`: what of the plan is to be played on another; null where the plan asks for nothing. */
export type Replaceable = Rack & { readonly slot: Slot | null };

/**
 * The same from any rack: as it is, or as a plan expects it to be. With `costOf` the first handful say
 * what they cost later, and of two that sound right as they stand, or of two that do not, what leaves
 * fewer slots missing comes first, then fewer with a backup. With `isBestEnough` costs are asked for until it is known what comes
 * first; the others then stand as they would without.
 *
 * @example
 * rankStandIns({ ...rack, player: 'ash', sound: soundOfA1 })[0].instrument // => 'S1'
 */
export function rankStandIns(
	rack: Rack,
	costOf: ((one: Hand) => LaterCost | null) | null = null,
	isBestEnough = false,
): readonly StandIn[] {
	const ranked = takeOvers(rack)
		.map((one): Ranked => ({ ...one, later: [], ranks: ranksOf(rack, one) }))
		.sort(compareRanked);
	const inOrder = costOf === null ? ranked : costed(ranked, costOf, isBestEnough);
	return inOrder.map((one) => {
		const { readyInSeconds, later } = one;
		const { instrument, tuning, capo } = one.hand;
		const why = whyInOrder(one, { ranked: inOrder, rack });
		return { instrument, readyInSeconds, tuning, capo, why, later };
	});
}

function costed(
	ranked: readonly Ranked[],
	costOf: (one: Hand) => LaterCost | null,
	isBestEnough: boolean,
): readonly Ranked[] {
	const top = ranked[0]?.ranks;
	let [least, worst] = [Number.POSITIVE_INFINITY, 0];
	const first = ranked.slice(0, HANDFUL).map((one): Ranked => {
		const { ranks } = one;
		const isBehind = BEFORE_COST.some((criterion) => ranks[criterion] !== top?.[criterion]);
		if (isBestEnough && (isBehind || least === 0)) return one;
		const cost = costOf(one.hand);
		// Not known, it costs no less than the worst that is: it comes before nothing by that.
		if (cost === null) return { ...one, later: UNKNOWN, ranks: { ...ranks, later: worst } };
		// Missing before substituted; no show has so many slots of either.
		const later = cost.missing * 100_000 + cost.substituted;
		worst = Math.max(worst, later);
		least = Math.min(least, later);
		return { ...one, later: cost.later, ranks: { ...ranks, later } };
	});
	const best = first.find(({ ranks }) => ranks.later === least);
	const inOrder = first.sort((one, other) =>
		isBestEnough ? Number(other === best) - Number(one === best) : compareRanked(one, other),
	);
	return [...inOrder, ...ranked.slice(HANDFUL)];
}

/** What is to be heard from this player, and what would be replaced. */
function soundAsked({
	session,
	plan,
	player,
	instrument,
	section: at,
}: StandInsAsked): Pick<Replaceable, 'slot'> & { readonly sound: Sound | null } {
	const held = session.players[player]?.holds ?? null;
	const slots = plan.slots.filter((slot) => slot.player === player);
	const isForHeld =
		instrument === undefined
			? session.phase.value === 'song' && held !== null
			: instrument === held;
	const slot =
		slots.find(({ section }) => section === at) ??
		slots.find((one) => {
			if (isForHeld) return one.section.hasBegun;
			return instrument === undefined || [one.instrument, one.named].includes(instrument);
		}) ??
		null;
	// Between songs what has strings down in their hands is what is to be replaced, by what the plan gives or by another.
	const isHeldDown = (session.instruments[held ?? '']?.context.stringsDown.length ?? 0) > 0;
	const comes = openBreakOf(session, player)?.instrument ?? slot?.instrument ?? slot?.named ?? null;
	const replaced =
		instrumentById(session.show).get(
			instrument ?? (isForHeld || isHeldDown ? held : comes) ?? '',
		) ?? null;
	if (slot !== null) return { slot, sound: soundOfSlot(session.show, slot, replaced ?? undefined) };
	const context = session.instruments[replaced?.id ?? '']?.context;
	if (replaced === null || context === undefined) return { slot, sound: null };
	const { kind } = replaced;
	return { slot, sound: { tuning: soundingTuning(context, kind), kind, replaced } };
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
	const kind = own?.kind ?? slot.kind;
	if (kind === null) return null;
	return { tuning: soundingTuning(slot, kind), kind, replaced: replaced ?? own };
}
