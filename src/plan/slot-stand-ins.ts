// Stand-ins for every hand-over of a plan made before the doors: with the rack as the plan expects it
// to be at each of those moments.

import type { InstrumentState } from '../../machines/instrument.ts';
import type { NightMs } from '../journal/entry.ts';
import type { Show } from '../showfile/show.ts';
import { handedAhead, releasedAhead } from './ahead-state.ts';
import type { Plan, Section, Slot, StandIn, Work } from './plan.ts';
import { rankStandIns, soundOfSlot } from './stand-ins.ts';

export type SlotStandIns = { readonly slot: Slot; readonly standIns: readonly StandIn[] };

/** What was in hands before an interval is back on the rack this much after the song before it. */
const BACK_MS = 15_000;

/**
 * For each slot that begins a stint, or for which nothing can be had, in playing order, what could take
 * over, best first. `instruments` are the states that the plan began with.
 *
 * @example
 * slotStandIns(show, { plan: beforeDoors, instruments: states })[0].standIns[0].instrument // => 'S1'
 */
export function slotStandIns(
	show: Show,
	{ plan, instruments }: { readonly plan: Plan; readonly instruments: States },
): readonly SlotStandIns[] {
	const rack = new Map(Object.entries(instruments));
	const hands = new Map<string, string>();
	const undone = [...plan.work].sort((one, other) => one.finishMs - other.finishMs);
	return plan.sections.flatMap((section) => {
		if (section.isAfterInterval) {
			const backMs = (section.previousEndMs ?? section.startMs) + BACK_MS;
			for (const id of hands.values()) release(rack, id, backMs);
			hands.clear();
		}
		finishWork(rack, undone, section);
		const slots = plan.slots.filter((slot) => slot.section === section);
		const found = slots
			.filter(({ isHandOver, why }) => isHandOver || why !== null)
			.map((slot): SlotStandIns => {
				const sound = soundOfSlot(show, slot);
				if (sound === null) return { slot, standIns: [] };
				const holder = (id: string): string | null =>
					slots.find((one) => one.instrument === id)?.player ??
					[...hands].find(([, held]) => held === id)?.[0] ??
					null;
				return {
					slot,
					standIns: rankStandIns({
						show,
						instruments: Object.fromEntries(rack),
						holder,
						handOvers: plan.handOvers,
						nowMs: section.startMs,
						player: slot.player,
						sound,
					}),
				};
			});
		changeHands({ rack, hands, slots, section });
		return found;
	});
}

type States = Readonly<Record<string, InstrumentState>>;
type ExpectedRack = Map<string, InstrumentState>;

function release(rack: ExpectedRack, id: string, atMs: NightMs): void {
	const state = rack.get(id);
	if (state !== undefined) rack.set(id, releasedAhead(state, atMs));
}

/** Marks ready what is finished by the section's start. */
function finishWork(rack: ExpectedRack, undone: Work[], { startMs }: Section): void {
	while (undone[0] !== undefined && undone[0].finishMs <= startMs) {
		const work = undone.shift();
		const state = work && rack.get(work.instrument);
		if (!work || !state) continue;
		const { to, capo, finishMs } = work;
		rack.set(work.instrument, {
			value: 'racked',
			context: {
				...state.context,
				tuning: to,
				capo,
				readyAtMs: finishMs,
				isToWipe: false,
				stringsDown: [],
			},
		});
	}
}

type Change = {
	readonly rack: ExpectedRack;
	readonly hands: Map<string, string>;
	readonly slots: readonly Slot[];
	readonly section: Section;
};

function changeHands({ rack, hands, slots, section }: Change): void {
	const after = new Map(
		slots.flatMap(({ player, instrument }) =>
			instrument === null ? [] : [[player, instrument] as const],
		),
	);
	for (const [player, id] of [...hands]) {
		if (after.get(player) === id) continue;
		release(rack, id, section.startMs);
		hands.delete(player);
	}
	for (const { player, instrument, tuning, capo } of slots) {
		const state = instrument === null ? undefined : rack.get(instrument);
		if (instrument === null || state === undefined) continue;
		rack.set(instrument, handedAhead(state, { tuning, capo }, section.startMs));
		hands.set(player, instrument);
	}
}
