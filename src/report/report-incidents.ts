// The incidents of a night for its report, each with the song that was on, or, between songs, the one that
// was to come.

import { cleanText } from '../base/clean-text.ts';
import { tenths } from '../base/show-clock.ts';
import type { NightMs } from '../journal/entry.ts';
import { nextSongItem, positionOf, songOnNow } from '../session/find.ts';
import type { Incident, Session } from '../session/session.ts';
import type { Show } from '../showfile/show.ts';
import { pedalName, playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { triedWords } from '../words/fault.ts';
import { NOT_DESCRIBED, stuckPedal } from '../words/report.ts';
import type { NightStep } from './night-steps.ts';

/** When something was: on the show clock (null before a first song gave it a zero) and by the clock on the wall. */
export type ReportTime = { readonly mark: string | null; readonly clock: string };

export type ReportIncident = {
	readonly id: number;
	readonly at: ReportTime;
	/** Place of the song that was on; null where none was. */
	readonly position: number | null;
	readonly song: string | null;
	/** Where none was on: the song that was to come next; null after the last. */
	readonly before: string | null;
	/** The record's own word; `incidentKindWords` says it in ours. */
	readonly kind: string;
	readonly player: string | null;
	readonly instrument: string | null;
	readonly string: number | null;
	readonly standIn: string | null;
	readonly silenceSeconds: number | null;
	readonly words: readonly string[];
};

type Night = {
	readonly steps: readonly NightStep[];
	/** How things stand at the end of what is known. */
	readonly last: Session;
	readonly timeAt: (atMs: NightMs) => ReportTime;
};

/** In the order in which they were noted. */
export function reportIncidents(
	show: Show,
	{ steps, last, timeAt }: Night,
): readonly ReportIncident[] {
	return last.incidents.map((one, place): ReportIncident => {
		const step = steps.find(({ after }) => after.incidents.some(({ id }) => id === one.id));
		const item = step ? (songOnNow(step.before)?.item ?? null) : null;
		const next = step && item === null ? nextSongItem(step.before) : null;
		return {
			id: place + 1,
			at: timeAt(one.atMs),
			position: item && positionOf(last.list, item),
			song: item && songTitle(show, item.song),
			before: next && songTitle(show, next.song),
			kind: cleanText(one.kind ?? NOT_DESCRIBED),
			player: one.player && cleanText(playerName(show, one.player)),
			instrument: one.instrument && cleanText(shownInstrument(show, one.instrument)),
			string: one.string,
			standIn: one.standIn && cleanText(shownInstrument(show, one.standIn)),
			silenceSeconds: one.silenceSeconds === null ? null : tenths(one.silenceSeconds),
			words: [...pedalWords(show, one), ...faultWords(last, one), ...one.words].map(cleanText),
		};
	});
}

function pedalWords(show: Show, { player, pedal }: Incident): readonly string[] {
	return player === null || pedal === null ? [] : [stuckPedal(pedalName(show, player, pedal))];
}

function faultWords(last: Session, { id }: Incident): readonly string[] {
	return last.faults
		.filter(({ incident }) => incident === id)
		.flatMap((fault) => triedWords(last, fault));
}
