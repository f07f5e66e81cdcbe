// The letters of players and the slots of instruments that a list makes.

import type { Rack } from './list-reading.ts';
import type { SetList } from './list-row.ts';

/** A capital of each player's name that nobody before has, by player's id. */
export function lettersOf({ players }: SetList): ReadonlyMap<string, string> {
	const letters = new Map<string, string>();
	const free = new Set('ABCDEFGHIJKLMNOPQRSTUVWXYZ');
	for (const { id, name } of players) {
		const own = [...name.normalize('NFD').toUpperCase()].find((one) => free.has(one));
		const letter = own ?? [...free][0] ?? 'I';
		free.delete(letter);
		letters.set(id, letter);
	}
	return letters;
}

/** Slots that cells name stay; the others get the next free digit, then a letter that begins nobody's name. */
export function giveSlots(
	made: readonly { slot: string | null }[],
	list: SetList,
	rack: Rack,
): void {
	const taken = new Set(rack.instruments.map(({ slot }) => slot));
	for (const one of made) {
		if (one.slot === null) continue;
		if (taken.has(one.slot)) one.slot = null;
		else taken.add(one.slot);
	}
	const initials = new Set(
		[...rack.players, ...list.players].map(({ name }) => name.normalize('NFD').toLowerCase()[0]),
	);
	const letters = [...'qwertyuiopasdfghjklzxcvbnm'].filter((one) => !initials.has(one));
	// Players need letters of their own in prompts.
	const spare = Math.max(0, 26 - rack.players.length - list.players.length - initials.size);
	const free = [...'123456789', ...letters.slice(0, spare)].filter((one) => !taken.has(one));
	for (const one of made) if (one.slot === null) one.slot = free.shift() ?? null;
}
