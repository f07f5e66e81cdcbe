// Stand-ins for every hand-over of a plan made before the doors: with the rack as the plan expects it
// to be at each of those moments.

import { holderOf } from '../../session/find.ts';
import type { Session } from '../../session/session.ts';
import type { Budget } from '../choice/beam-search.ts';
import type { Hand } from '../demand/hand.ts';
import type { Moment } from '../demand/sections-ahead.ts';
import type { LeftOut, Plan, Section, Slot, StandIn } from '../plan.ts';
import type { LaterCost } from '../what-if/later-cost.ts';
import { costAgainst } from '../what-if/later-cost.ts';
import { withPartInstead } from '../what-if/part-instead.ts';
import { playedThrough, type Reached } from '../what-if/played-through.ts';
import { sessionAfter } from '../what-if/what-if.ts';
import { leftOutOf } from './left-out.ts';
import type { Rack } from './stand-in-ranks.ts';
import { rankStandIns, soundOfSlot } from './stand-ins.ts';

export type SlotStandIns = {
	readonly slot: Slot;
	readonly standIns: readonly StandIn[];
	/** Where nothing could take over, why each that seems to cannot. */
	readonly leftOut: readonly LeftOut[];
	/** What they cost later was worked out. */
	readonly isCosted: boolean;
};

export type SlotsAsked = {
	readonly plan: Plan;
	/** Of which it is said what they cost later when what is handed over breaks as the song begins. */
	readonly costs: 'none' | 'best' | 'handful';
	/** What their costs are planned from, the first slots first; left out, all are. */
	readonly from?: Budget;
	/** Of which slots; left out, of those that begin a stint and those for which nothing can be had. */
	readonly isAsked?: (slot: Slot) => boolean;
};

/**
 * For each of these slots in playing order what could take over, best first. `session` is what the plan
 * began with.
 *
 * @example
 * slotStandIns(session, { plan, costs: 'handful' })[0].standIns[0].instrument // => 'S1'
 */
export function slotStandIns(session: Session, asked: SlotsAsked): readonly SlotStandIns[] {
	const { plan, from, isAsked = ({ isHandOver, isMissing }) => isHandOver || isMissing } = asked;
	const bySection = Map.groupBy(plan.slots, ({ section }) => section);
	return playedThrough(session, plan).flatMap((reached) => {
		const slots = bySection.get(reached.section) ?? [];
		const without = { without: reached.session, ...(from === undefined ? {} : { from }) };
		const costOf = costAgainst(momentOf(reached), without);
		const playing = new Map(slots.map(({ instrument, player }) => [instrument, player]));
		return slots.filter(isAsked).map((slot) => {
			const isCosted = asked.costs !== 'none' && (from === undefined || from.left > 0);
			const costs = isCosted ? asked.costs : 'none';
			const rack = rackOf(slot, reached, { plan, playing });
			const standIns = standInsFor(slot, reached, { costs, costOf, rack });
			const leftOut = rack === null || standIns.length > 0 ? [] : leftOutOf(rack);
			return { slot, standIns, leftOut, isCosted };
		});
	});
}

function momentOf({ section, session }: Reached): Moment {
	return { session, nowMs: section.startMs, plannedZeroMs: 0 };
}

/** The rack as it is when what is handed over there breaks as the song begins; where nothing is, just before. */
function rackOf(
	slot: Slot,
	{ section, before, session }: Reached,
	{
		plan,
		playing,
	}: Pick<SlotsAsked, 'plan'> & { readonly playing: ReadonlyMap<string | null, string> },
): Rack | null {
	const { show } = session;
	const { player, instrument } = slot;
	const sound = soundOfSlot(show, slot);
	if (sound === null) return null;
	const now = instrument === null ? before : session;
	return {
		show,
		instruments: now.instruments,
		holder: (id: string) => playing.get(id) ?? holderOf(now, id),
		handOvers: plan.handOvers,
		nowMs: section.startMs,
		endMs: endOfItem(plan, section),
		player,
		sound,
		asked: slot.asked,
	};
}

/** When the song ends of which this is a section. */
function endOfItem({ sections }: Plan, { item }: Section): number | null {
	return sections.findLast((one) => one.item === item)?.endMs ?? null;
}

function standInsFor(
	slot: Slot,
	reached: Reached,
	{
		costs,
		costOf,
		rack,
	}: Pick<SlotsAsked, 'costs'> & {
		readonly costOf: ReturnType<typeof costAgainst>;
		readonly rack: Rack | null;
	},
): readonly StandIn[] {
	if (rack === null) return [];
	if (costs === 'none') return rankStandIns(rack);
	const { instrument } = slot;
	const instead = (hand: Hand) =>
		instrument === null
			? withPartInstead(reached.session, slot, hand)
			: sessionAfter(momentOf(reached), [
					{ do: 'report-break', instrument },
					{ do: 'stand-in', ...hand },
				]);
	const later = ({ instrument: other, tuning, capo }: Hand): LaterCost =>
		costOf(instead({ instrument: other, tuning, capo }));
	return rankStandIns(rack, later, costs === 'best');
}
