// The keys that stand for the entries of a list, and slots in the order in which a rack is filled.

import { slot as slotShape } from '../showfile/scalar-shape.ts';

/** Takes back wherever no text is typed, so that it stands for nothing else. */
export const TAKE_BACK = 'u';

const KEYS = [...'123456789abcdefghijklmnopqrstvwxyz'];
const LETTER = /^[a-z]$/;
const LETTERS = 26;

/** The key of the entry at this index; empty where there is none left. */
export function keyAt(index: number): string {
	return KEYS[index] ?? '';
}

/** The index that a key stands for; -1 for none. */
export function indexOfKey(key: string): number {
	return KEYS.indexOf(key.toLowerCase());
}

/** What is on the rack already, and how many players need a letter of their own. */
export type Rack = { readonly slots: readonly (string | null)[]; readonly players: number };

/** Why a text can be no slot here, or the slot as the file writes it. */
export function readSlot(text: string, { slots, players }: Rack): string | 'bad' | 'taken' {
	const slot = slotShape.safeParse(text).data;
	if (slot === undefined || slot === TAKE_BACK) return 'bad';
	if (slots.includes(slot)) return 'taken';
	const letters = slots.filter((one) => one !== null && LETTER.test(one)).length;
	// Slots have the first say about letters, and each player needs one in prompts.
	return LETTER.test(slot) && letters + players >= LETTERS ? 'bad' : slot;
}

/** The next slot that nothing has; null where none is left. */
export function freeSlot(rack: Rack): string | null {
	return KEYS.find((key) => readSlot(key, rack) === key) ?? null;
}
