// Which pack each hand-over of a plan puts on, from what is worn now: the same law as is recorded in the night.

import type { Plan, PlannedHandOver, Slot } from '../plan/plan.ts';
import { type PackHanded, packsHanded } from '../session/packs-handed.ts';
import type { Session } from '../session/session.ts';

type Ahead = { readonly plan: Plan; readonly session: Session };

export type PackAlong = PackHanded & {
	readonly handOver: PlannedHandOver;
	/** What they wore until then. */
	readonly before: string | null;
};

/** Every hand-over of something, in the plan's order. */
export function packsAlong({ plan, session }: Ahead): readonly PackAlong[] {
	const players = { ...session.players };
	return plan.sections.flatMap((section): PackAlong[] => {
		if (section.isAfterInterval && section.point === 0) {
			for (const [id, state] of Object.entries(players)) players[id] = { ...state, holds: null };
		}
		const handed = plan.handOvers.filter((one) => one.section === section);
		const packs = packsHanded({ players, suspectPacks: session.suspectPacks }, handed);
		return handed.flatMap((handOver, at): PackAlong[] => {
			const state = players[handOver.player];
			const pack = packs[at];
			if (state === undefined || pack === undefined) return [];
			const { instrument } = handOver;
			const worn = instrument === null ? state.pack : pack.worn;
			players[handOver.player] = { ...state, holds: instrument, pack: worn };
			return instrument === null ? [] : [{ ...pack, handOver, before: state.pack }];
		});
	});
}

/** A sheet asks for every use of its plan. */
const walked = new WeakMap<Plan, readonly PackAlong[]>();

/** What goes on with this use; undefined where nothing is handed for it. */
export function packOfSlot(ahead: Ahead, slot: Slot): PackAlong | undefined {
	const all = walked.get(ahead.plan) ?? packsAlong(ahead);
	walked.set(ahead.plan, all);
	return all.find(
		({ handOver }) => handOver.section === slot.section && handOver.player === slot.player,
	);
}
