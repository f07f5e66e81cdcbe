// Stand-ins for every hand-over of a plan made before the doors: with the rack as the plan expects it
// to be at each of those moments.

import { holderOf } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { costAgainst } from './later-cost.ts';
import type { Plan, Slot, StandIn } from './plan.ts';
import { playedThrough, type Reached } from './played-through.ts';
import { rankStandIns, soundOfSlot } from './stand-ins.ts';
import { sessionAfter } from './what-if.ts';

export type SlotStandIns = { readonly slot: Slot; readonly standIns: readonly StandIn[] };

export type SlotsAsked = {
	readonly plan: Plan;
	/** With what each costs later when what is handed over breaks as the song begins. */
	readonly hasCosts: boolean;
	/** Of which slots; left out, of those that begin a stint and those for which nothing can be had. */
	readonly isAsked?: (slot: Slot) => boolean;
};

/**
 * For each of these slots in playing order what could take over, best first. `session` is what the plan
 * began with.
 *
 * @example
 * slotStandIns(session, { plan, hasCosts: true })[0].standIns[0].instrument // => 'S1'
 */
export function slotStandIns(session: Session, asked: SlotsAsked): readonly SlotStandIns[] {
	const { plan, isAsked = ({ isHandOver, why }) => isHandOver || why !== null } = asked;
	return playedThrough(session, plan).flatMap((reached) =>
		plan.slots
			.filter((one) => one.section === reached.section)
			.filter(isAsked)
			.map((slot) => ({ slot, standIns: standInsFor(slot, reached, asked) })),
	);
}

function standInsFor(
	slot: Slot,
	{ section, before, session }: Reached,
	{ plan, hasCosts }: SlotsAsked,
): readonly StandIn[] {
	const { show, instruments } = before;
	const { player, instrument } = slot;
	const sound = soundOfSlot(show, slot);
	if (sound === null) return [];
	const moment = { session, nowMs: section.startMs, plannedZeroMs: 0 };
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
	if (!hasCosts || instrument === null) return rankStandIns(rack);
	const costOf = costAgainst(moment, session);
	return rankStandIns(rack, ({ instrument: other, tuning, capo }) =>
		costOf(
			sessionAfter(moment, [
				{ do: 'report-break', instrument },
				{ do: 'stand-in', instrument: other, tuning, capo },
			]),
		),
	);
}
