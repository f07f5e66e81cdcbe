// The letter that names each player in prompts. Slots have the first say about letters, because they
// are marked on the rack; then what the file asks for; then the players' names.

import type { KeyRefusal } from './show-fault.ts';

/** What decides a player's letter. */
export type KeyWish = { readonly name: string; readonly key: string | undefined };

const ALPHABET = [...'abcdefghijklmnopqrstuvwxyz'];

/**
 * One letter for each player in order, lower case: the one asked for, else the first letter of the
 * name that is neither a slot nor taken, else the first such letter of the alphabet; or why there is
 * none.
 */
export function playerKeys(
	wishes: readonly KeyWish[],
	slots: ReadonlySet<string>,
): readonly (string | KeyRefusal)[] {
	const taken = new Set<string>();
	const asked = wishes.map(({ key }): string | KeyRefusal | null => {
		if (key === undefined) return null;
		if (slots.has(key)) return 'is-slot';
		if (taken.has(key)) return 'is-taken';
		taken.add(key);
		return key;
	});
	return wishes.map(({ name }, index) => {
		const answer = asked[index];
		if (answer) return answer;
		const plain = name.normalize('NFD').toLowerCase();
		const letters = [...plain].filter((letter) => ALPHABET.includes(letter));
		const free = [...letters, ...ALPHABET].find((one) => !taken.has(one) && !slots.has(one));
		if (free === undefined) return 'none-left';
		taken.add(free);
		return free;
	});
}
