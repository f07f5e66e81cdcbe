// Stand-ins for every hand-over of a plan made before the doors: with the rack as the plan expects it
// to be at each of those moments.

import { holderOf } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import type { Hand } from './hand.ts';
import { costAgainst } from './later-cost.ts';
import { withPartInstead } from './part-instead.ts';
import type { Plan, Slot, StandIn } from './plan.ts';
import { playedThrough, type Reached } from './played-through.ts';
import type { LaterCost } from './stand-ins.ts';
import { rankStandIns, soundOfSlot } from './stand-ins.ts';
import type { Moment } from './timeline.ts';
import { sessionAfter } from './what-if.ts';

export type SlotStandIns = { readonly slot: Slot; readonly standIns: readonly StandIn[] };

export type SlotsAsked = {
	readonly plan: Plan;
	/** Of which it is said what they cost later when what is handed over breaks as the song begins. */
	readonly costs: 'none' | 'best' | 'handful';
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
	const { plan, isAsked = ({ isHandOver, why }) => isHandOver || why !== null } = asked;
	return playedThrough(session, plan).flatMap((reached) => {
		const slots = plan.slots.filter((one) => one.section === reached.section).filter(isAsked);
		const costOf = costAgainst(momentOf(reached), reached.session);
		return slots.map((slot) => ({
			slot,
			standIns: standInsFor(slot, reached, { ...asked, costOf }),
		}));
	});
}

type CostOf = ReturnType<typeof costAgainst>;

function momentOf({ section, session }: Reached): Moment {
	return { session, nowMs: section.startMs, plannedZeroMs: 0 };
}

function standInsFor(
	slot: Slot,
	reached: Reached,
	{ plan, costs, costOf }: SlotsAsked & { readonly costOf: CostOf },
): readonly StandIn[] {
	const { section, before } = reached;
	const { show, instruments } = before;
	const { player, instrument } = slot;
	const sound = soundOfSlot(show, slot);
	if (sound === null) return [];
	const rack = {
		show,
		instruments,
		holder: (id: string) =>
			plan.slots.find((one) => one.section === section && one.instrument === id)?.player ??
			holderOf(before, id),
		handOvers: plan.handOvers,
		nowMs: section.startMs,
		player,
		sound,
	};
	if (costs === 'none') return rankStandIns(rack);
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
