// What instruments rang at in a live night, kept in the gear journal: noted, withdrawn where the step that said it is
// undone, noted again where that is redone. One after the other, since one copy writes there at a time.

import type { Paths } from '../../disk/paths.ts';
import type { GearEntry, Rang as RangOnGear } from '../../gear/gear-entry.ts';
import { gearId } from '../../gear/gear-id.ts';
import type { RecordId } from '../../journal/record.ts';
import type { NightOptions } from '../../night/night-under-way.ts';
import type { Show } from '../../showfile/show.ts';
import { notKept } from '../../words/gear-journal.ts';
import { keepGear } from '../bench/gear-journal.ts';

type Parts = {
	readonly places: Paths;
	/** Folder of the show file. */
	readonly folder: string;
	/** The night's id. */
	readonly night: string;
	/** What was noted before, by whichever night. */
	readonly noted: readonly RangOnGear[];
	readonly show: () => Show;
	readonly wallMs: () => number;
};

/** What a night takes of it. */
export function ringingNotes({
	places,
	folder,
	night,
	noted,
	show,
	wallMs,
}: Parts): Required<Pick<NightOptions, 'keepRinging' | 'ringingUndone'>> {
	const noteOf = (of: RecordId) => `${night} ${of}`;
	const byNote = new Map(noted.map((one) => [one.note, one]));
	let before: Promise<unknown> = Promise.resolve();
	function kept(entry: GearEntry): Promise<string | null> {
		const now = before.then(async () => {
			const trouble = await keepGear(places, entry);
			return trouble === null ? null : notKept(trouble);
		});
		before = now.catch(() => null);
		return now;
	}
	return {
		keepRinging: ({ instrument, hertz }, of) => {
			const one = show().instruments.find(({ id }) => id === instrument);
			if (one === undefined) return Promise.resolve(null);
			const note = noteOf(of);
			const at = wallMs();
			const rang: RangOnGear = { k: 'feedback-noted', at, gear: gearId(one, folder), hertz, note };
			byNote.set(note, rang);
			return kept(rang);
		},
		ringingUndone: (of, isBack) => {
			const note = noteOf(of);
			const rang = byNote.get(note);
			if (rang === undefined) return Promise.resolve(null);
			const at = wallMs();
			return kept(
				isBack ? { ...rang, at } : { k: 'feedback-withdrawn', at, gear: rang.gear, note },
			);
		},
	};
}
