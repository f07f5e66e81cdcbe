// Why a player gets in a song what the plan gives them: everything that could be played there instead,
// and what the whole night costs with it, each planned anew.

import { cuePoints } from '../../../machines/song.ts';
import type { Show } from '../../showfile/show.ts';
import { slotStandIns } from '../backups/slot-stand-ins.ts';
import type { Hand } from '../demand/hand.ts';
import { instrumentById } from '../demand/instrument-by-id.ts';
import { preferenceCost } from '../demand/options.ts';
import type { Cost, LeftOut, Plan, Slot } from '../plan.ts';
import { momentBefore, readyAtZero } from '../timed-choice/before-doors.ts';
import { planCore } from '../timed-choice/plan-core.ts';
import { withPartInstead } from '../what-if/part-instead.ts';

export type Alternative = { readonly hand: Hand; readonly cost: Cost };

export type Considered = {
	readonly slot: Slot;
	/** The song names the instrument: nothing else is taken of its own accord. */
	readonly isNamed: boolean;
	/** What else could be played, in the order of stand-ins. */
	readonly alternatives: readonly Alternative[];
	/** Where there is none, why. */
	readonly leftOut: readonly LeftOut[];
};

/**
 * For each player that a song asks something of, what was considered in a plan made before the doors.
 *
 * @example
 * considered(show, beforeDoors, 'lantern')[0].alternatives.map(({ hand, cost }) => [hand.instrument, cost.retunings]) // => [['S1', 1], ['A2', 1], ['A1', 2], ['B3', 1]]
 */
export function considered(show: Show, plan: Plan, song: string): readonly Considered[] {
	const session = readyAtZero(show);
	const isAsked = ({ section, isKept }: Slot) => section.song === song && !isKept;
	return slotStandIns(session, { plan, costs: 'handful', isAsked }).map(
		({ slot, standIns, leftOut }) => ({
			slot,
			leftOut,
			isNamed: slot.named !== null,
			alternatives: standIns.map((hand) => ({ hand, cost: costWith(show, slot, hand) })),
		}),
	);
}

function costWith(show: Show, slot: Slot, { instrument, tuning, capo }: Hand): Cost {
	const hand = { instrument, tuning, capo };
	const session = withPartInstead(readyAtZero(show), slot, hand);
	const { cost } = planCore(momentBefore(session)).plan;
	return { ...cost, preference: cost.preference + preferenceOf(show, slot, hand) };
}

/** What was named to see what it costs is no less a matter of preference. */
function preferenceOf(show: Show, { section, player }: Slot, hand: Hand): number {
	const song = show.songs.find(({ id }) => id === section.song);
	const instrument = instrumentById(show).get(hand.instrument);
	const part = song && cuePoints(song)[section.point]?.parts[player];
	return part?.kind === 'needs' && instrument !== undefined
		? preferenceCost(instrument, hand.capo, part)
		: 0;
}
