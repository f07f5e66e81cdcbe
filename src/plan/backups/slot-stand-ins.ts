// Stand-ins for every hand-over of a plan made before the doors: with the rack as the plan expects it
// to be at each of those moments.

import { holderOf } from '../../session/find.ts';
import type { Session } from '../../session/session.ts';
import type { Budget } from '../choice/beam-search.ts';
import type { Hand } from '../demand/hand.ts';
import type { LeftOut, Plan, Slot, StandIn } from '../plan.ts';
import { costAgainst } from '../what-if/later-cost.ts';
import { withPartInstead } from '../what-if/part-instead.ts';
import { playedThrough, type Reached } from '../what-if/played-through.ts';
import { sessionAfter } from '../what-if/what-if.ts';
import { rankStandIns, soundOfSlot } from './stand-ins.ts';
import { leftOutOf, type Rack } from './take-over.ts';

export type SlotStandIns = {
	readonly slot: Slot;
	readonly standIns: readonly StandIn[];
	/** Where nothing could take over, why each that seems to cannot. */
	readonly leftOut: readonly LeftOut[];
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
	const { plan, costs, from = { left: Number.POSITIVE_INFINITY } } = asked;
	const { isAsked = ({ isHandOver, isMissing }) => isHandOver || isMissing } = asked;
	const bySection = Map.groupBy(plan.slots, ({ section }) => section);
	return playedThrough(session, plan).flatMap((reached) => {
		const slots = bySection.get(reached.section) ?? [];
		const moment = { session: reached.session, nowMs: reached.section.startMs, plannedZeroMs: 0 };
		const costOf = costAgainst(moment, { without: reached.session, from });
		return slots.filter(isAsked).map((slot) => {
			const rack = rackOf(slot, reached, { plan, slots });
			if (rack === null) return { slot, standIns: [], leftOut: [] };
			const later = (hand: Hand) =>
				costOf(
					slot.instrument === null
						? withPartInstead(reached.session, slot, hand)
						: sessionAfter(moment, [
								{ do: 'report-break', instrument: slot.instrument },
								{ do: 'stand-in', ...hand },
							]),
				);
			const isCosted = costs !== 'none' && from.left > 0;
			const standIns = rankStandIns(rack, isCosted ? later : null, costs === 'best');
			return { slot, standIns, leftOut: standIns.length > 0 ? [] : leftOutOf(rack) };
		});
	});
}

/** The rack as it is when what is handed over there breaks as the song begins; where nothing is, just before. */
function rackOf(
	slot: Slot,
	{ section, before, session }: Reached,
	{ plan, slots }: { readonly plan: Plan; readonly slots: readonly Slot[] },
): Rack | null {
	const sound = soundOfSlot(session.show, slot);
	if (sound === null) return null;
	const now = slot.instrument === null ? before : session;
	const playing = new Map(slots.map(({ instrument, player }) => [instrument, player]));
	return {
		show: session.show,
		instruments: now.instruments,
		holder: (id: string) => playing.get(id) ?? holderOf(now, id),
		handOvers: plan.handOvers,
		nowMs: section.startMs,
		endMs: plan.sections.findLast(({ item }) => item === section.item)?.endMs ?? null,
		player: slot.player,
		sound,
		asked: slot.asked,
	};
}
