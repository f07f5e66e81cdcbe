// What people were told of the songs that leave a choice of instrument: kept with the night, so that the
// plan is the same one after a restart and changes as little of it as it can.

import type { Entry, ToldHand } from '../journal/entry.ts';
import type { ListItem, Session } from './session.ts';

/** One player's part from one cue point of a list item on; 0 is its start. */
export type ToldSlot = {
	readonly item: string;
	readonly point: number;
	readonly player: string;
};

/** What the slot is called in the journal: `4 0 ash`. */
export function slotName({ item, point, player }: ToldSlot): string {
	return `${item} ${point} ${player}`;
}

/** The slot of that name; players' ids have no spaces. */
export function slotNamed(name: string): ToldSlot {
	const [item = '', point = '', player = ''] = name.split(' ');
	return { item, point: Number(point), player };
}

/** What was told of a slot: null for nothing to play, undefined where nothing was told. */
export function toldAt({ told }: Session, slot: ToldSlot): ToldHand | null | undefined {
	const name = slotName(slot);
	return Object.hasOwn(told, name) ? told[name] : undefined;
}

/** The session once people have been told this, too. */
export function tellPlan(
	session: Session,
	{ hands, slots }: Extract<Entry, { k: 'plan-told' }>,
): Session {
	const news = Object.entries(slots).map(([name, place]) => [
		name,
		place === null ? null : (hands[place] ?? null),
	]);
	return { ...session, told: { ...session.told, ...Object.fromEntries(news) } };
}

/** What was told of the items on this list: one that is gone may leave its key to another song. */
export function toldOfItems({ told }: Session, list: readonly ListItem[]): Session['told'] {
	const keys = new Set(list.map(({ key }) => key));
	return Object.fromEntries(
		Object.entries(told).filter(([name]) => keys.has(slotNamed(name).item)),
	);
}
