import type { ShowDraft } from '../setlist/show-draft.ts';
import type { Making, Place } from './making.ts';
import { freeSlot } from './numbered.ts';

/** The show after an answer, with what is to be said of it; or why the answer cannot be used. */
export type Answered =
	| { readonly making: Making; readonly says?: string }
	| { readonly refused: string };

/** The show with these changes, asked this next. */
export function toPlace(making: Making, place: Place, changed: Partial<ShowDraft>): Answered {
	const draft = { ...making.draft, ...changed };
	const rack = { slots: draft.instruments.map(({ slot }) => slot), players: draft.players.length };
	return { making: { ...making, draft, place, slot: freeSlot(rack) } };
}
