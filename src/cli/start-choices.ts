// What a start without a command offers: unfinished nights, the last show, the example show.

import type { NightSummary } from '../disk/nights-folder.ts';
import { OPEN_EXAMPLE, OPEN_EXAMPLE_AGAIN, openAgain, resumeNight } from '../words/program.ts';
import { isFinished } from './night-on-disk.ts';

export type Choice = {
	readonly file: string;
	readonly words: string;
	/** Never opened before, or nothing is left open of it. */
	readonly isNew: boolean;
};

export type StartSources = {
	/** The newest first. */
	readonly nights: readonly NightSummary[];
	/** The show file opened last, if it is still there. */
	readonly lastShow: string | null;
	readonly example: string;
};

/** Each show file once, the one used last first; the example comes last where it was never opened. */
export function startChoices({ nights, lastShow, example }: StartSources): readonly Choice[] {
	const shows = nights.filter(
		({ header }) => header !== null && !header.isRehearsal && header.showPath !== '',
	);
	const choices = shows.flatMap(({ id, header, lastRecords }): (Choice & { place: number })[] => {
		if (!header || isFinished(lastRecords)) return [];
		const words = resumeNight(header.title, id);
		return [{ file: header.showPath, words, isNew: false, place: placeOf(shows, header.showPath) }];
	});
	if (lastShow !== null) {
		const words = lastShow === example ? OPEN_EXAMPLE_AGAIN : openAgain(lastShow);
		choices.push({ file: lastShow, words, isNew: true, place: placeOf(shows, lastShow) });
	}
	const sorted: Choice[] = choices
		.toSorted((one, other) => one.place - other.place)
		.map(({ file, words, isNew }) => ({ file, words, isNew }));
	const all = [...sorted, { file: example, words: OPEN_EXAMPLE, isNew: true }];
	return all.filter((one, index) => all.findIndex(({ file }) => file === one.file) === index);
}

/** 0 for the show of the newest night; one without a night was opened after all of them. */
function placeOf(shows: readonly NightSummary[], file: string): number {
	return shows.findIndex(({ header }) => header?.showPath === file);
}
