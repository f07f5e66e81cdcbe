// What is to be done before the next show, each line with its reason, from a night and what is known of those before.

import { cleanText } from '../base/clean-text.ts';
import { dayTimeText } from '../base/show-clock.ts';
import { gearId } from '../gear/gear-id.ts';
import { nextSongItem, songOnNow } from '../session/find.ts';
import { songTitle } from '../showfile/shown-names.ts';
import { AFTER_LAST, beforeSong } from '../words/report.ts';
import { between, inSong } from '../words/tomorrow.ts';
import { linesToBuy } from './lines-to-buy.ts';
import { linesToCarry } from './lines-to-carry.ts';
import { linesToRepair } from './lines-to-repair.ts';
import { linesToRestring } from './lines-to-restring.ts';
import { linesToTell } from './lines-to-tell.ts';
import type { NightStep } from './night-steps.ts';
import type { TomorrowAsked, TomorrowLine, TomorrowParts } from './tomorrow-line.ts';

/** The lines, in the order of their kinds; none after a night in which nothing was recorded. */
export function tomorrowLines(asked: TomorrowAsked): readonly TomorrowLine[] {
	const last = asked.steps.at(-1)?.after;
	if (last === undefined) return [];
	const parts: TomorrowParts = {
		...asked,
		last,
		show: last.show,
		gearOf: (instrument) => gearId(instrument, asked.folder),
		momentOf: (step) => momentWords(step, asked.dayOffsetMinutes),
	};
	const restrings = linesToRestring(parts);
	return [
		...restrings.map(({ line }) => line),
		...linesToRepair(parts),
		...linesToBuy(
			parts,
			restrings.flatMap(({ gauges }) => gauges),
		),
		...linesToTell(parts),
		...linesToCarry(parts),
	].map(cleaned);
}

function momentWords({ entry, before }: NightStep, offsetMinutes: number): string {
	const clock = dayTimeText(entry.at, offsetMinutes).slice(0, 5);
	const on = songOnNow(before);
	if (on !== null) return inSong(clock, on.song.title);
	const next = nextSongItem(before);
	const where = next === null ? AFTER_LAST : beforeSong(songTitle(before.show, next.song));
	return between(clock, where);
}

function cleaned({ kind, instrument, slot, name, text, why }: TomorrowLine): TomorrowLine {
	return {
		...{ kind, instrument, slot },
		name: name === null ? null : cleanText(name),
		...{ text: cleanText(text), why: cleanText(why) },
	};
}
