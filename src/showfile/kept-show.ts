// The copies of shows that a night's journal holds. Whatever version of the program wrote them, they are
// taken for shows only when they can be gone by.

import type { Show } from './show.ts';

/** What every version's show has, and nothing works without. */
const LISTS = ['players', 'instruments', 'songs', 'set'] as const;

/** A night's own copy of its show; null when it has none, or one that this version cannot take for a show. */
export function keptShow(copy: unknown): Show | null {
	if (typeof copy !== 'object' || copy === null) return null;
	const show = copy as Partial<Show>;
	return LISTS.every((list) => Array.isArray(show[list])) ? (copy as Show) : null;
}
