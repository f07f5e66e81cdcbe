// An incident on one line, for whoever reads everything of it: in the technician's list and beside its mark in the picture.

import { incidentKindWords } from '../words/entry-words.ts';
import * as say from '../words/report.ts';
import type { ReportIncident } from './report-incidents.ts';
import { hoursMinutes } from './report-time.ts';

/** `20:08: song 2 Lantern, string break, Ash, 1 Amber, string 3, backup S Spare, down for 0:14` */
export function incidentLine(one: ReportIncident): string {
	const parts = [
		placeOf(one),
		incidentKindWords(one.kind),
		one.player,
		one.instrument,
		one.string === null ? null : say.stringLabel(one.string),
		one.standIn === null ? null : say.backupLabel(one.standIn),
		one.silenceSeconds === null ? null : say.downFor(one.silenceSeconds),
		one.later.outSeconds === null || one.pedal !== null
			? null
			: say.backAfter(one.later.outSeconds),
		...wordsOf(one),
		one.remark,
	];
	return say.timedLine(hoursMinutes(one.at), parts.filter((part) => part !== null).join(', '));
}

/** What was typed, and of a pedal that it is stuck and until when. */
function wordsOf(one: ReportIncident): readonly string[] {
	const until = stuckUntil(one);
	const [first, ...others] = one.words;
	if (until === null || first === undefined) return one.words;
	return [`${first} ${until}`, ...others];
}

/** Until when and in which song a pedal was stuck; null for an incident of none. */
export function stuckUntil({ pedal, later }: ReportIncident): string | null {
	if (pedal === null) return null;
	const { backAt, backIn, backBefore } = later;
	const between = backBefore === null ? null : say.beforeSong(backBefore);
	const where = backIn === null ? between : say.inSong(say.songLabel(backIn.position, backIn.song));
	return say.stuckUntil(backAt && hoursMinutes(backAt), where);
}

/** The song that was on, or what it was before. */
function placeOf({ position, song, before }: ReportIncident): string {
	if (song !== null) return say.songLabel(position, song);
	return before === null ? say.AFTER_LAST : say.beforeSong(before);
}
