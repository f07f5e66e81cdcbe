// Uses of instruments in a plan, as a sheet asks of them: which one work and hand-overs are for, and what state it comes in.

import type { Section, Slot } from '../plan/plan.ts';
import { capoAct } from '../words/capo-words.ts';
import type { SheetSource } from './sheet-gear.ts';

export function isOf(
	slot: Slot,
	other: { readonly section: Section; readonly player: string },
): boolean {
	return other.section === slot.section && other.player === slot.player;
}

/** What an instrument is in before this use of it. */
export function stateBefore({ plan, session }: SheetSource, slot: Slot) {
	const last = plan.slots
		.slice(0, plan.slots.indexOf(slot))
		.findLast((one) => one.instrument === slot.instrument);
	return last ?? session.instruments[slot.instrument ?? '']?.context ?? null;
}

/** The capo comes off something that is not played again: where it is, its next use says so. */
export function capoLeft({ plan }: SheetSource, slot: Slot): readonly string[] {
	const later = plan.slots.slice(plan.slots.indexOf(slot) + 1);
	const isOver = !later.some(({ instrument }) => instrument === slot.instrument);
	return slot.capo > 0 && isOver ? [capoAct(0)] : [];
}
