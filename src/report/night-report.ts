// A night's journal told as a report: what was played, who had what, what went wrong, what is to be
// done tomorrow. Data only; how it looks on paper is for the files beside this one.

import { cleanText } from '../base/clean-text.ts';
import { dayTimeText, markText, tenths } from '../base/show-clock.ts';
import type { NightMs, SongEnd } from '../journal/entry.ts';
import { nextSongItem, positionOf, songOnNow } from '../session/find.ts';
import type { Run, Session, SongItem } from '../session/session.ts';
import type { Show } from '../showfile/show.ts';
import { shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { cautionsFor } from '../words/cautions.ts';
import { entryWords } from '../words/entry-words.ts';
import type { HandOverLine, WrongHold } from './hand-over-lines.ts';
import { handOverLines } from './hand-over-lines.ts';
import type { NightStep } from './night-steps.ts';
import { songAt } from './night-steps.ts';
import type { OtherThanAsked } from './other-than-asked.ts';
import { otherThanAsked } from './other-than-asked.ts';
import { repairList } from './repair-list.ts';
import type { ReportIncident, ReportTime } from './report-incidents.ts';
import { reportIncidents } from './report-incidents.ts';
import { showOfNight } from './show-of-night.ts';

export type ReportSongState = SongEnd | 'dropped' | 'on' | 'to-come';

/** Why a song was never on: taken off the list, jumped over, or the night ended before it. */
export type WhyNotPlayed = 'dropped' | 'skipped' | 'to-come';

export type ReportSong = {
	/** Place among the songs of the list, from 1; null for one that was dropped by hand. */
	readonly position: number | null;
	readonly song: string;
	readonly title: string;
	readonly state: ReportSongState;
	/** Null where it was on. */
	readonly whyNotPlayed: WhyNotPlayed | null;
	readonly isEncore: boolean;
	/** Each time it was on, oldest first. */
	readonly runs: readonly {
		readonly began: ReportTime;
		readonly ended: ReportTime | null;
		readonly seconds: number | null;
		readonly how: SongEnd | null;
	}[];
	/** Everything from the end of the song before until its own end, a sentence each. */
	readonly happened: readonly ReportLine[];
};

export type ReportLine = { readonly at: ReportTime; readonly words: string };

export type NightReport = {
	readonly title: string;
	readonly venue: string | null;
	readonly date: string | null;
	readonly night: string;
	readonly isRehearsal: boolean;
	readonly isOver: boolean;
	readonly began: ReportTime | null;
	readonly ended: ReportTime | null;
	/** Something went wrong, or is out of order or in doubt since; strings that are due are neither. */
	readonly hasTrouble: boolean;
	/** The show was ended, songs were played and there was no trouble. */
	readonly isClean: boolean;
	readonly songs: readonly ReportSong[];
	readonly beforeShow: readonly ReportLine[];
	readonly handOvers: readonly (HandOverLine & { readonly at: ReportTime })[];
	readonly wrongHolds: readonly (WrongHold & { readonly at: ReportTime })[];
	/** Songs played on another instrument, or in another tuning or capo, than the show file asked for. */
	readonly otherThanAsked: readonly (Omit<OtherThanAsked, 'item'> & {
		readonly at: ReportTime;
		readonly position: number | null;
	})[];
	readonly incidents: readonly ReportIncident[];
	readonly memos: readonly ReportLine[];
	readonly boardsCorrected: readonly ReportLine[];
	/** When the program or the machine was away, or the clock was set. */
	readonly gaps: readonly ReportLine[];
	/** What was found wrong with the night's file, a sentence each. */
	readonly damage: readonly string[];
	readonly tomorrow: readonly string[];
	readonly stringsBroken: readonly {
		readonly instrument: string;
		readonly count: number;
		/** Numbers of those that were named. */
		readonly strings: readonly number[];
	}[];
	readonly cautions: readonly string[];
};

/** What a report is made from. */
export type ReportParts = {
	readonly show: Show;
	readonly night: string;
	readonly isRehearsal: boolean;
	/** What counts of the night, in order, each with the session before and after; see `nightSteps`. */
	readonly steps: readonly NightStep[];
	/** How the night began. */
	readonly opened: Session;
	/** Add to UTC for the time of day where the show was. */
	readonly dayOffsetMinutes: number;
	readonly damage: readonly string[];
};

/** The report of a night, whether it is over or not. */
export function nightReport(parts: ReportParts): NightReport {
	const { steps } = parts;
	const show = showOfNight(parts.show, steps);
	const last = steps.at(-1)?.after ?? parts.opened;
	const timeAt = (atMs: NightMs): ReportTime => ({
		mark: last.zeroAtMs === null ? null : markText(atMs - last.zeroAtMs),
		clock: dayTimeText(atMs, parts.dayOffsetMinutes),
	});
	const line = ({ entry, before, after }: NightStep): ReportLine => ({
		at: timeAt(entry.at),
		words: entryWords(entry, show, entry.k === 'next-chosen' ? after : before),
	});
	const linesOf = (some: readonly NightStep[]): ReportLine[] =>
		some.map(line).filter(({ words }) => words !== '');
	const ofKinds = (...kinds: readonly string[]): ReportLine[] =>
		linesOf(steps.filter(({ entry }) => kinds.includes(entry.k)));
	const incidents = reportIncidents(show, { steps, last, timeAt });
	const { handOvers, wrongHolds } = handOverLines(show, steps);
	const others = otherThanAsked(show, steps);
	const hasPlayed = last.list.some((item) => item.kind === 'song' && item.runs.some(isPlayed));
	const tomorrow = repairList(show, last);
	const hasFaults = Object.values(last.instruments).some(
		({ context }) => context.faults.length > 0,
	);
	const hasTrouble =
		hasFaults ||
		[incidents, wrongHolds, others, parts.damage, last.suspectPacks].some((all) => all.length > 0);
	const isOver = last.phase.value === 'over' || last.phase.value === 'packed';
	const ended = lastEnd(last);
	const memos = ofKinds('memo-written');
	const isRestringDue = Object.values(last.instruments).some(
		(state) => state.context.stringsDown.length > 0,
	);
	return {
		title: cleanText(show.title),
		venue: show.venue === null ? null : cleanText(show.venue),
		date: show.date,
		night: parts.night,
		isRehearsal: parts.isRehearsal,
		isOver,
		began: last.zeroAtMs === null ? null : timeAt(last.zeroAtMs),
		ended: isOver && ended !== null ? timeAt(ended) : null,
		hasTrouble,
		isClean: isOver && hasPlayed && !hasTrouble,
		songs: last.list
			.filter((item) => item.kind === 'song')
			.map(
				(item): ReportSong => ({
					position: positionOf(last.list, item) || null,
					song: item.song,
					title: cleanText(songTitle(show, item.song)),
					state: songState(last, item, isOver),
					whyNotPlayed: whyNotPlayed(last, item),
					isEncore: item.isEncore,
					runs: item.runs.map((run) => ({
						began: timeAt(run.beganAtMs),
						ended: run.endedAtMs === null ? null : timeAt(run.endedAtMs),
						seconds: run.endedAtMs === null ? null : tenths((run.endedAtMs - run.beganAtMs) / 1000),
						how: run.how,
					})),
					happened: linesOf(steps.filter((step) => songOf(step)?.key === item.key)),
				}),
			),
		beforeShow: linesOf(steps.filter((step) => songOf(step) === null)),
		handOvers: handOvers.map((one) => ({ ...one, at: timeAt(one.atMs) })),
		wrongHolds: wrongHolds.map((one) => ({ ...one, at: timeAt(one.atMs) })),
		otherThanAsked: others.map(({ item, ...one }) => {
			const listed = last.list.find(({ key }) => key === item);
			return {
				...one,
				at: timeAt(one.atMs),
				position: listed?.kind === 'song' ? positionOf(last.list, listed) : null,
			};
		}),
		incidents,
		memos,
		boardsCorrected: ofKinds('pedal-corrected'),
		gaps: ofKinds('resumed', 'slept', 'clock-set'),
		damage: parts.damage.map(cleanText),
		tomorrow,
		stringsBroken: brokenStrings(show, last),
		cautions: cautionsFor({
			texts: [
				...tomorrow,
				...incidents.flatMap(({ kind, words }) => [kind, ...words]),
				...memos.map(({ words }) => words),
			],
			hasRestring: isRestringDue,
			isOnStage: tomorrow.length > 0,
		}),
	};
}

/** The song that a step is told with: what was on, between songs the next one; null before the first. */
function songOf({ before, after }: NightStep): SongItem | null {
	const on = songOnNow(after)?.item ?? songOnNow(before)?.item;
	const current = songAt(after);
	return on ?? (current && (nextSongItem(after) ?? current));
}

function isPlayed({ how }: Run): boolean {
	return how === 'played' || how === 'cut-short';
}

function songState(session: Session, item: SongItem, isOver: boolean): ReportSongState {
	const run = item.runs.at(-1);
	if (run) return run.how ?? 'on';
	return isOver || whyNotPlayed(session, item) !== 'to-come' ? 'dropped' : 'to-come';
}

function whyNotPlayed(session: Session, item: SongItem): WhyNotPlayed | null {
	if (item.runs.length > 0) return null;
	const { list } = session;
	if (positionOf(list, item) === 0) return 'dropped';
	const at = list.findIndex((one) => one.key === item.key);
	const now = list.findIndex((one) => one.key === session.current);
	return item.isPassedOver || at < now ? 'skipped' : 'to-come';
}

function lastEnd(session: Session): NightMs | null {
	const ends = session.list.flatMap((item) =>
		item.kind === 'song' ? item.runs.flatMap((run) => run.endedAtMs ?? []) : [],
	);
	return ends.length === 0 ? null : Math.max(...ends);
}

function brokenStrings(show: Show, session: Session): NightReport['stringsBroken'] {
	const breaks = session.incidents.filter((one) => one.kind === 'string-break');
	const broken = [...new Set(breaks.flatMap((one) => one.instrument ?? []))];
	return broken.map((instrument) => {
		const own = breaks.filter((one) => one.instrument === instrument);
		return {
			instrument: cleanText(shownInstrument(show, instrument)),
			count: own.length,
			strings: own.flatMap((one) => one.string ?? []),
		};
	});
}
