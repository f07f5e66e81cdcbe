// A show half made: the draft so far and what is asked next. It is a fold over the answers given, so that taking
// one back is leaving it out.

import type { ShowDraft } from '../setlist/show-draft.ts';
import { freeSlot } from './numbered.ts';

/** What a start of `new` knows before anything is asked. */
export type Beginning = {
	/** `2026-06-12` */
	readonly today: string;
	/** What the show is called unless somebody says so. */
	readonly title: string;
	/** All but its day, from an earlier night; left out where everything is asked. */
	readonly earlier?: EarlierNight;
	/** A file that is there and is added to. */
	readonly adding?: FileThere;
};

export type FileThere = {
	readonly text: string;
	/** What it holds. */
	readonly draft: ShowDraft;
};

export type EarlierNight = {
	readonly draft: ShowDraft;
	/** How many things were carried over. */
	readonly carried: number;
	/** What is to be done about them before the show. */
	readonly toDo: readonly string[];
};

/** What is asked now; `hands` is about one song of the catalogue, by its index. */
export type Place =
	| {
			readonly ask:
				| 'add'
				| 'title'
				| 'venue'
				| 'date'
				| 'start'
				| 'curfew'
				| 'player'
				| 'plays'
				| 'instrument'
				| 'kind'
				| 'tuning'
				| 'whose'
				| 'song'
				| 'length'
				| 'order'
				| 'write';
	  }
	| { readonly ask: 'hands'; readonly song: number };

export type Making = {
	readonly draft: ShowDraft;
	readonly place: Place;
	/** The slot that the next instrument gets; null for none left. */
	readonly slot: string | null;
	/** Where the rest comes from an earlier night and is not asked. */
	readonly earlier?: EarlierNight;
	/** Where a file that is there is added to: nothing of it is asked again. */
	readonly adding?: FileThere;
};

/** Before the first answer. */
export function begun({ today, title, earlier, adding }: Beginning): Making {
	if (adding) {
		const { draft } = adding;
		const slots = draft.instruments.map(({ slot }) => slot);
		const slot = freeSlot({ slots, players: draft.players.length });
		return { draft, place: { ask: 'add' }, slot, adding };
	}
	if (earlier) {
		const { draft } = earlier;
		return {
			draft: { ...draft, title, date: today },
			place: { ask: 'title' },
			slot: null,
			earlier,
		};
	}
	return {
		draft: {
			title,
			venue: null,
			date: today,
			start: null,
			curfew: null,
			players: [],
			instruments: [],
			songs: [],
			set: [],
			remarks: [],
		},
		place: { ask: 'title' },
		slot: '1',
	};
}
