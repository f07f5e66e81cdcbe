// The work of a night: each time that an instrument was made ready, with what it was wanted for, whether it was in time,
// and how long it took, by the plan's figures and in truth.

import { cleanText } from '../base/clean-text.ts';
import { tenths } from '../base/show-clock.ts';
import type { Entry, NightMs } from '../journal/entry.ts';
import type { Job } from '../plan/plan.ts';
import { workNeeded } from '../plan/schedule/work-needed.ts';
import { cellAt } from '../session/cells.ts';
import {
	findInstrument,
	findSongItem,
	itemConcerned,
	nextSongItem,
	positionOf,
	songOnNow,
} from '../session/find.ts';
import type { Session } from '../session/session.ts';
import type { Show } from '../showfile/show.ts';
import { shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { gapBefore } from './hand-over-times.ts';
import type { NightStep } from './night-steps.ts';
import { type ReportTime, secondsOf } from './report-time.ts';
import { workTaken } from './work-taken.ts';

export type ReportWork = {
	/** When it was noted as done. */
	readonly at: ReportTime;
	/** The song that was on then, and its place; null between songs. */
	readonly doneIn: { readonly position: number | null; readonly song: string } | null;
	/** Between songs: the one that was to come; null where one was on, and after the last. */
	readonly doneBefore: string | null;
	readonly instrument: string;
	readonly instrumentId: string;
	/** By what was to be done from how it stood; a mark on one that was ready already is a touch-up. */
	readonly job: Job;
	readonly tuning: string;
	readonly capo: number;
	/** Pitches or strings put on early, the touch-up still to come. */
	readonly isEarly: boolean;
	/** By the show's own times for such work. */
	readonly plannedSeconds: number;
	/** From when it came back until it was noted: at the most so long; null where the journal does not hold that. */
	readonly takenSeconds: number | null;
	/** Of these, what comes last and is to be fresh. */
	readonly plannedLastSeconds: number;
	/** The next hand-over of it, and the song that this was for; null where it was not handed again. */
	readonly usedAt: ReportTime | null;
	readonly usedFor: string | null;
	/** From done until handed; null likewise. */
	readonly leftSeconds: number | null;
	/** The song that named it was on already, or the gap before that was over; null where no song asked for it then. */
	readonly isLate: boolean | null;
	/** That song's key, title and place; null where none asked. */
	readonly item: string | null;
	readonly wantedFor: string | null;
	readonly position: number | null;
};

type Night = {
	readonly show: Show;
	readonly steps: readonly NightStep[];
	readonly last: Session;
	readonly timeAt: (atMs: NightMs) => ReportTime;
};

/** In the order in which it was noted; marks of several at once are a piece each. */
export function reportWork({ show, steps, last, timeAt }: Night): readonly ReportWork[] {
	const nextHandOver = nextHandOvers(steps);
	const taken = workTaken(steps);
	return steps.flatMap((step, place): ReportWork[] => {
		const { entry, before, after } = step;
		if (entry.k !== 'made-ready') return [];
		const instrument = findInstrument(before, entry.instrument);
		const state = before.instruments[entry.instrument];
		const done = after.instruments[entry.instrument];
		// One that could not be made ready as it was changed nothing.
		if (instrument === null || state === undefined || done === undefined || state === done)
			return [];
		const { tuning, capo } = done.context;
		const asked = { instrument, state, to: { tuning, capo } };
		const { seconds, lastSeconds, job } = workNeeded(asked);
		const used = nextHandOver[place] ?? null;
		const wanted = wantedNow(before, entry);
		const item = wanted && findSongItem(last, wanted.item);
		const takenSeconds = taken.get(step);
		const on = songOnNow(before)?.item ?? null;
		const next = on === null ? nextSongItem(before) : null;
		return [
			{
				at: timeAt(entry.at),
				doneIn: on && {
					position: positionOf(last.list, on) || null,
					song: cleanText(songTitle(show, on.song)),
				},
				doneBefore: next && cleanText(songTitle(show, next.song)),
				instrument: cleanText(shownInstrument(show, entry.instrument)),
				instrumentId: entry.instrument,
				job: entry.isRestrung === true ? 'restring' : job,
				tuning: cleanText(tuning.name),
				capo,
				isEarly: entry.isEarly === true,
				plannedSeconds: tenths(entry.isEarly === true ? seconds - lastSeconds : seconds),
				takenSeconds: takenSeconds === undefined ? null : tenths(takenSeconds),
				plannedLastSeconds: entry.isEarly === true ? 0 : tenths(lastSeconds),
				usedAt: used ? timeAt(used.entry.at) : null,
				usedFor: used ? usedFor(show, used) : null,
				leftSeconds: used ? secondsOf(used.entry.at - entry.at) : null,
				isLate: wanted?.isLate ?? null,
				item: wanted?.item ?? null,
				wantedFor: item && cleanText(songTitle(show, item.song)),
				position: item && (positionOf(last.list, item) || null),
			},
		];
	});
}

/** For each step that made an instrument ready, the next hand-over of it; null where there is none. */
function nextHandOvers(steps: readonly NightStep[]): readonly (NightStep | null)[] {
	// By instrument, the nearest last: found in one pass from the end.
	const given = new Map<string, NightStep[]>();
	return steps
		.toReversed()
		.map((step): NightStep | null => {
			const { entry } = step;
			if (entry.k === 'handed-over' || entry.k === 'hand-over-corrected') {
				if (entry.instrument === null) return null;
				const later = given.get(entry.instrument);
				if (later === undefined) given.set(entry.instrument, [step]);
				else later.push(step);
			}
			if (entry.k !== 'made-ready') return null;
			// One that was noted later may say that it was before.
			return given.get(entry.instrument)?.findLast((one) => one.entry.at >= entry.at) ?? null;
		})
		.reverse();
}

function usedFor(show: Show, { entry, before }: NightStep): string | null {
	const later = entry.k === 'handed-over' ? entry.item : undefined;
	const item = findSongItem(before, later ?? itemConcerned(before));
	return item && cleanText(songTitle(show, item.song));
}

/** What the song on or next asks of this instrument, and whether it was wanted before now. */
function wantedNow(
	session: Session,
	{ instrument, at }: Extract<Entry, { k: 'made-ready' }>,
): { readonly item: string; readonly isLate: boolean } | null {
	const item = findSongItem(session, itemConcerned(session));
	if (item === null) return null;
	const isAsked = session.show.players.some(({ id: player }) => {
		const { part } = cellAt(session, { item, point: 0, player });
		return part?.kind === 'named' && part.instrument === instrument;
	});
	if (!isAsked) return null;
	if (songOnNow(session) !== null) return { item: item.key, isLate: true };
	const gapSeconds = gapBefore(session, item);
	const { phaseSinceMs } = session;
	const isOver =
		gapSeconds !== null && phaseSinceMs !== null && at > phaseSinceMs + gapSeconds * 1000;
	return { item: item.key, isLate: isOver };
}
