// The show of the next night from an earlier one: the same gear and songs as that night knew them last, in the order
// as it was played, everything as it stood at the end. Each thing carried over is told once, with where it comes from.

import { draftOfShow } from '../setlist/draft-of-show.ts';
import type { ShowDraft } from '../setlist/show-draft.ts';
import * as words from '../words/carried.ts';
import { type Carried, carriedOver } from './carried-over.ts';
import { nextShow } from './next-show.ts';
import type { NightBefore } from './night-before.ts';

export type NextNight = {
	/** Its date is that of the earlier night. */
	readonly draft: ShowDraft;
	readonly carried: readonly Carried[];
};

const sentence = (text: string): string => `${text}.`;

/** The next night's show as a draft, and what of it comes from the night before. */
export function nextNight(before: NightBefore): NextNight {
	const last = before.steps.at(-1)?.after ?? before.opened;
	const carried = carriedOver(last, before);
	const draft = draftOfShow(nextShow(last, before));
	const remarksOf = (id: string) =>
		carried.filter(({ instrument }) => instrument === id).map(({ text }) => sentence(text));
	const overall = carried.filter(({ what }) => what === 'battery' || what === 'order');
	return {
		draft: {
			...draft,
			instruments: draft.instruments.map((one) => ({ ...one, remarks: remarksOf(one.id) })),
			remarks: [words.madeFrom(before.night), ...overall.map(({ text }) => sentence(text))],
			furtherRemarks: carried.flatMap(({ at, text }) =>
				at === undefined ? [] : [{ at, text: sentence(text) }],
			),
		},
		carried: carried.map(({ at: _, ...one }) => one),
	};
}
