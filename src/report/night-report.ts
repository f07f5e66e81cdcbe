// A night's journal told as a report: what was played, who had what, what went wrong, what is to be
// done tomorrow. Data only; how it looks on paper is for the files beside this one.

import { cleanText } from '../base/clean-text.ts';
import { dayTimeText, markText } from '../base/show-clock.ts';
import type { NightMs } from '../journal/entry.ts';
import { NO_REMARKS, type Remarks, remarkOrNull } from '../journal/remarks.ts';
import { nextSongItem, positionOf, songOnNow } from '../session/find.ts';
import type { Run, Session, SongItem } from '../session/session.ts';
import type { Show } from '../showfile/show.ts';
import { shownInstrument } from '../showfile/shown-names.ts';
import { cautionsFor } from '../words/cautions.ts';
import { entryWords } from '../words/entry-words.ts';
import { gearFacts } from './gear-facts.ts';
import type { HandOverLine, WrongHold } from './hand-over-lines.ts';
import { handOverLines } from './hand-over-lines.ts';
import { type Lanes, lanesOf } from './lanes.ts';
import { lostTimes } from './lost-times.ts';
import { type MissedCues, missedCues } from './missed-cues.ts';
import { AWAY, type NightStep, songAt } from './night-steps.ts';
import type { OtherThanAsked } from './other-than-asked.ts';
import { otherThanAsked } from './other-than-asked.ts';
import { type Repair, repairList } from './repair-list.ts';
import {
	type ReportInstrument,
	type ReportPack,
	reportInstruments,
	reportPacks,
} from './report-gear.ts';
import type { ReportIncident } from './report-incidents.ts';
import { reportIncidents } from './report-incidents.ts';
import {
	type SongGone,
	type SongNight,
	type SongTimes,
	songsGone,
	songTimes,
} from './report-songs.ts';
import type { ReportTime } from './report-time.ts';
import { type ReportTiming, reportTiming } from './report-timing.ts';
import { type ReportWork, reportWork } from './report-work.ts';
import { showOfNight } from './show-of-night.ts';
import { tomorrowLines } from './tomorrow.ts';
import type { TomorrowLine } from './tomorrow-line.ts';

/** A song and everything from the end of the song before until its own end, a sentence each. */
export type ReportSong = SongTimes & { readonly happened: readonly ReportLine[] };

export type ReportLine = { readonly at: ReportTime; readonly words: string };

export type NightReport = {
	readonly title: string;
	readonly venue: string | null;
	readonly date: string | null;
	readonly night: string;
	readonly isRehearsal: boolean;
	readonly isOver: boolean;
	/** Add to UTC for the time of day where the show was. */
	readonly dayOffsetMinutes: number;
	readonly began: ReportTime | null;
	readonly ended: ReportTime | null;
	/** Something went wrong, or is out of order or in doubt since; strings that are due are neither. */
	readonly hasTrouble: boolean;
	/** The show was ended, songs were played and there was no trouble. */
	readonly isClean: boolean;
	readonly songs: readonly ReportSong[];
	/** Songs of the file's first list that a later reading of it left out. */
	readonly songsGone: readonly SongGone[];
	readonly players: readonly {
		readonly id: string;
		readonly name: string;
		readonly plays: string | null;
		/** Whose hands, by the show file. */
		readonly tech: string | null;
	}[];
	readonly instruments: readonly ReportInstrument[];
	/** For each instrument and player, the night as intervals. */
	readonly lanes: Lanes;
	readonly timing: ReportTiming;
	readonly work: readonly ReportWork[];
	readonly missedCues: readonly MissedCues[];
	readonly packs: readonly ReportPack[];
	/** Steps that were taken back and stayed so; none of them is in any other part. */
	readonly takenBack: number;
	/** What somebody wrote of the night afterwards, and who signs; null where nobody did. */
	readonly remark: string | null;
	readonly signed: string | null;
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
	/** The same, with the instrument that each is about. */
	readonly repairs: readonly Repair[];
	readonly stringsBroken: readonly {
		readonly instrument: string;
		readonly instrumentId: string;
		readonly count: number;
		/** Numbers of those that were named. */
		readonly strings: readonly number[];
	}[];
	readonly cautions: readonly string[];
	/** What to buy, whom to tell, and what the next show finds otherwise than its file says, by this night alone. */
	readonly forNext: readonly TomorrowLine[];
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
	/** How many steps were taken back and stayed so. */
	readonly takenBack: number;
	/** When the first song was meant to start; null where the show file gives no start. */
	readonly plannedZeroMs: NightMs | null;
	/** Add to UTC for the time of day where the show was. */
	readonly dayOffsetMinutes: number;
	readonly damage: readonly string[];
	readonly remarks?: Remarks;
};

/** The report of a night, whether it is over or not. */
export function nightReport(parts: ReportParts): NightReport {
	const { steps } = parts;
	const show = showOfNight(parts.show, steps);
	const last = steps.at(-1)?.after ?? parts.opened;
	const timeAt = (atMs: NightMs): ReportTime => ({
		mark: last.zeroAtMs === null ? null : markText(atMs - last.zeroAtMs),
		clock: dayTimeText(atMs, parts.dayOffsetMinutes),
		atMs,
	});
	const line = ({ entry, before, after }: NightStep): ReportLine => ({
		at: timeAt(entry.at),
		words: entryWords(entry, show, entry.k === 'next-chosen' ? after : before),
	});
	const linesOf = (some: readonly NightStep[]): ReportLine[] =>
		some.map(line).filter(({ words }) => words !== '');
	const ofKinds = (...kinds: readonly string[]): ReportLine[] =>
		linesOf(steps.filter(({ entry }) => kinds.includes(entry.k)));
	const isOver = last.phase.value === 'over' || last.phase.value === 'packed';
	const { handOvers, wrongHolds } = handOverLines(show, steps);
	const others = otherThanAsked(show, steps);
	const remarks = parts.remarks ?? NO_REMARKS;
	const incidents = reportIncidents(show, { steps, last, others, remarks, timeAt });
	const { opened, plannedZeroMs } = parts;
	const night: SongNight = { show, opened, steps, last, isOver, plannedZeroMs, timeAt };
	const lateFor = (item: string): readonly number[] =>
		handOvers.flatMap((one, place) => (one.item === item && one.isLate === true ? [place] : []));
	const lanes = lanesOf(opened, steps);
	const hasPlayed = last.list.some((item) => item.kind === 'song' && item.runs.some(isPlayed));
	const packs = reportPacks(show, steps, timeAt);
	const repairs = repairList(show, last, { packs, endMs: lanes.toMs });
	const tomorrow = repairs.map(({ words }) => words);
	const hasFaults = Object.values(last.instruments).some(
		({ context }) => context.faults.length > 0,
	);
	const hasTrouble =
		hasFaults ||
		[incidents, wrongHolds, others, parts.damage, last.suspectPacks].some((all) => all.length > 0);
	const ended = lastEnd(last);
	const bySong = Map.groupBy(steps, (step) => songOf(step)?.key ?? null);
	const memos = ofKinds('memo-written');
	const isRestringDue = Object.values(last.instruments).some(
		(state) => state.context.stringsDown.length > 0,
	);
	const report: Omit<NightReport, 'forNext'> = {
		title: cleanText(show.title),
		venue: show.venue === null ? null : cleanText(show.venue),
		date: show.date,
		night: parts.night,
		isRehearsal: parts.isRehearsal,
		isOver,
		dayOffsetMinutes: parts.dayOffsetMinutes,
		began: last.zeroAtMs === null ? null : timeAt(last.zeroAtMs),
		ended: isOver && ended !== null ? timeAt(ended) : null,
		hasTrouble,
		isClean: isOver && hasPlayed && !hasTrouble,
		songs: songTimes(night).map((song) => ({
			...song,
			happened: linesOf(bySong.get(song.item) ?? []),
		})),
		songsGone: songsGone(night),
		players: show.players.map(({ id, name, plays, tech }) => ({
			id,
			name: cleanText(name),
			plays: plays === null ? null : cleanText(plays),
			tech: tech === null ? null : cleanText(nameOf(show.techs, tech)),
		})),
		instruments: reportInstruments(show, last, { lanes, steps, incidents }),
		lanes,
		timing: reportTiming(night, lostTimes(night, incidents, lateFor)),
		work: reportWork({ show, steps, last, timeAt }),
		missedCues: missedCues(night),
		packs,
		takenBack: parts.takenBack,
		remark: remarkOrNull(remarks.night),
		signed: remarkOrNull(remarks.signed),
		beforeShow: linesOf(bySong.get(null) ?? []),
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
		gaps: ofKinds(...AWAY, 'clock-set'),
		damage: parts.damage.map(cleanText),
		tomorrow,
		repairs,
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
	return { ...report, forNext: forNextNight(report, parts) };
}

/** What is not yet said as a repair. */
function forNextNight(
	report: Omit<NightReport, 'forNext'>,
	{ steps, dayOffsetMinutes }: ReportParts,
): readonly TomorrowLine[] {
	const folder = '';
	const nights = [gearFacts({ report, steps, folder })];
	return tomorrowLines({ nights, report, steps, dayOffsetMinutes, folder, next: null }).filter(
		({ kind }) => kind !== 'restring' && kind !== 'repair',
	);
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

function nameOf(
	things: readonly { readonly id: string; readonly name: string }[],
	id: string,
): string {
	return things.find((one) => one.id === id)?.name ?? id;
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
			instrumentId: instrument,
			count: own.length,
			strings: own.flatMap((one) => one.string ?? []),
		};
	});
}
