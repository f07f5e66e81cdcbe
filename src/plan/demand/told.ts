// What people have been told of the songs that leave a choice, as choosing asks for it; and what there is
// to tell them anew once a plan was made.

import type { Entry, NightMs, ToldHand } from '../../journal/entry.ts';
import type { Session } from '../../session/session.ts';
import { slotName, toldAt } from '../../session/told.ts';
import type { Plan, Section } from '../plan.ts';
import type { Hand } from './hand.ts';
import type { Outlook } from './outlook.ts';
import { samePitches } from './same-pitches.ts';

export type Told = {
	/** What the player was to have in that section; null for nothing, undefined where it was not told or nothing is to be chosen. */
	readonly handAt: (section: Section, player: string) => Hand | null | undefined;
};

/**
 * What counts of what people were told tonight; null where that is nothing. Whoever was given something
 * else by hand was told so by that: for as long as they were to keep what they did not get, nothing is told.
 *
 * @example
 * toldTonight(session, outlook) // => null
 */
export function toldTonight(session: Session, outlook: Outlook): Told | null {
	if (Object.keys(session.told).length === 0) return null;
	const { show, sections, asked } = outlook;
	const hands = new Map<string, Hand | null>();
	show.players.forEach(({ id: player }, seat) => {
		const settled = asked.findLastIndex((all) => all[seat]?.isSettled);
		let refused = refusedBy(session, player, sections[settled]);
		for (const [place, section] of sections.entries()) {
			const one = asked[place]?.[seat];
			if (place <= settled || one === undefined || one.goesOnWithin) continue;
			if (one.demand.kind === 'keeps') continue;
			const told = toldAt(session, { ...section, player });
			if (told?.instrument !== refused) refused = null;
			if (told !== undefined && refused === null) {
				hands.set(slotName({ ...section, player }), told);
			}
		}
	});
	return { handAt: (section, player) => hands.get(slotName({ ...section, player })) };
}

/** What the player was to have in a section for which they were given something else by hand. */
function refusedBy(session: Session, player: string, settled: Section | undefined): string | null {
	const state = session.players[player];
	if (settled === undefined || state === undefined || state.correctable !== null) return null;
	const told = toldAt(session, { ...settled, player })?.instrument ?? null;
	return told === state.holds ? null : told;
}

type PlanTold = Extract<Entry, { k: 'plan-told' }>;

/**
 * What this plan says otherwise than people were told, as an entry; none where it says the same.
 *
 * @example
 * toldEntries({ session, nowMs: 0 }, plan) // => []
 */
export function toldEntries(
	{ session, nowMs }: { readonly session: Session; readonly nowMs: NightMs },
	plan: Plan,
): readonly PlanTold[] {
	const hands: ToldHand[] = [];
	const slots: Record<string, number | null> = {};
	for (const { section, player, instrument, isChosen, tuning, capo } of plan.slots) {
		if (!isChosen) continue;
		const slot = { item: section.item, point: section.point, player };
		const hand = instrument === null ? null : { instrument, tuning, capo };
		const told = toldAt(session, slot);
		if (told !== undefined && isSame(told, hand)) continue;
		const known = hands.findIndex((one) => isSame(one, hand));
		if (hand !== null && known < 0) hands.push(hand);
		slots[slotName(slot)] = hand === null ? null : known < 0 ? hands.length - 1 : known;
	}
	return Object.keys(slots).length === 0 ? [] : [{ k: 'plan-told', at: nowMs, hands, slots }];
}

function isSame(one: ToldHand | null, other: ToldHand | null): boolean {
	if (one === null || other === null) return one === other;
	const isSameOne = one.instrument === other.instrument && one.capo === other.capo;
	return isSameOne && samePitches(one.tuning, other.tuning);
}
