// The keys that a user has set in place of the defaults: which can be, and why one cannot. Whatever was
// kept of them, every action has a key.

import {
	KEY_LABELS,
	keptKeyUnusable,
	keyFixed,
	keyNotChoosable,
	keyTaken,
} from '../words/actions.ts';
import { ACTIONS } from './actions.ts';
import type { KeyChoices } from './preferences.ts';

const CHOOSABLE = /^[a-z,.;'[\]=/\\`]$/;

/** The actions whose key can be chosen: those that a letter or a sign does; what feet and thumbs press stays. */
export const CHOOSABLE_ACTIONS = ACTIONS.filter(({ keys }) => CHOOSABLE.test(keys[0] ?? ''));

/** The key that does an action. */
export function keyOfAction(id: string, chosen: KeyChoices): string {
	return chosen[id] ?? ACTIONS.find((one) => one.id === id)?.keys[0] ?? '';
}

/** The keys that do an action as footer and help show them: `PgDn/space`. Function keys only stand in for a sign, and are left out. */
export function shownKeys(id: string, chosen: KeyChoices): string {
	const own = chosen[id];
	if (own !== undefined) return own;
	const keys = ACTIONS.find((one) => one.id === id)?.keys ?? [];
	return keys
		.filter((key) => !/^f\d+$/.test(key))
		.map((key) => KEY_LABELS[key] ?? key)
		.join('/');
}

/** Why this key cannot be for this action, a sentence; null when it can. */
export function whyNotKey(id: string, key: string, chosen: KeyChoices): string | null {
	if (!CHOOSABLE_ACTIONS.some((one) => one.id === id)) {
		return keyFixed(id);
	}
	if (!CHOOSABLE.test(key)) {
		return keyNotChoosable(key);
	}
	const other = ACTIONS.find(
		(one) =>
			one.id !== id && (chosen[one.id] === undefined ? one.keys : [chosen[one.id]]).includes(key),
	);
	return other === undefined ? null : keyTaken(key, other.id);
}

/** Those of the kept keys that can be used, and a sentence for each that cannot: its action has the default. */
export function usableKeys(kept: KeyChoices): {
	readonly keys: KeyChoices;
	readonly problems: readonly string[];
} {
	const problems: string[] = [];
	let keys: KeyChoices = Object.fromEntries(
		Object.entries(kept).filter(([id]) => ACTIONS.some((one) => one.id === id)),
	);
	// One that is dropped has its usual key again, which another may have taken.
	for (;;) {
		const wrong = Object.entries(keys).find(([id, key]) => whyNotKey(id, key, keys) !== null);
		if (wrong === undefined) return { keys, problems };
		const [id, key] = wrong;
		const why = whyNotKey(id, key, keys);
		problems.push(keptKeyUnusable(id, why ?? ''));
		const { [id]: _, ...others } = keys;
		keys = others;
	}
}
