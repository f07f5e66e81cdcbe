// The incidents of a night for its report, each with the song that was on, or, between songs, the one that
// was to come.

import { cleanText } from '../base/clean-text.ts';
import { tenths } from '../base/show-clock.ts';
import type { NightMs } from '../journal/entry.ts';
import type { RecordId } from '../journal/record.ts';
import { type Remarks, remarkOrNull } from '../journal/remarks.ts';
import { nextSongItem, positionOf, songOnNow } from '../session/find.ts';
import type { Incident, Session } from '../session/session.ts';
import type { Show } from '../showfile/show.ts';
import { pedalName, playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { triedWords } from '../words/fault.ts';
import { NOT_DESCRIBED, stuckPedal } from '../words/report.ts';
import type { NightStep } from './night-steps.ts';
import type { OtherThanAsked } from './other-than-asked.ts';
import { type ReportTime, secondsOf } from './report-time.ts';
import { stringHoursAt } from './string-hours.ts';

/** What came of a break or fault later in the night, as far as the journal holds it. */
export type LaterCost = {
	/**
	 * When new strings were on, or after a fault it was ready again, or the pedal switched again; null where nothing of it
	 * was noted, or where it is of none.
	 */
	readonly backAt: ReportTime | null;
	/** The song that was on then; null where none was, or likewise. */
	readonly backIn: { readonly position: number | null; readonly song: string } | null;
	/** Between songs, the one that was to come; null likewise, and after the last. */
	readonly backBefore: string | null;
	/** Seconds until then; null likewise. */
	readonly outSeconds: number | null;
	/** Songs that named the instrument and were played on another until it was ready again. */
	readonly songsOnOther: readonly {
		readonly item: string;
		readonly song: string;
		readonly played: string;
	}[];
	/** The song that was on was cut short. */
	readonly isSongCutShort: boolean;
};

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
	readonly playerId: string | null;
	readonly instrument: string | null;
	readonly instrumentId: string | null;
	readonly string: number | null;
	/** The pedal that does not switch. */
	readonly pedal: string | null;
	/** Hours that its strings had been in hands when one broke; null where that is not known. */
	readonly stringHours: number | null;
	readonly standIn: string | null;
	readonly standInId: string | null;
	readonly silenceSeconds: number | null;
	/** When what is in hands sounded again; null where the silence is not known. */
	readonly soundAt: ReportTime | null;
	/** Played on with what was in hands. */
	readonly isPlayedOn: boolean;
	/** Still without an answer at the end of what is known. */
	readonly isOpen: boolean;
	readonly later: LaterCost;
	readonly words: readonly string[];
	/** Identity of the record that noted it; a remark is kept by it. */
	readonly record: RecordId;
	/** What somebody wrote of it afterwards. */
	readonly remark: string | null;
};

type Night = {
	readonly steps: readonly NightStep[];
	/** How things stand at the end of what is known. */
	readonly last: Session;
	readonly others: readonly OtherThanAsked[];
	readonly remarks: Remarks;
	readonly timeAt: (atMs: NightMs) => ReportTime;
};

/** In the order in which they were noted. */
export function reportIncidents(show: Show, night: Night): readonly ReportIncident[] {
	const { steps, last, remarks, timeAt } = night;
	const noted = new Map(
		steps
			.filter(({ before, after }) => after.incidents.length > before.incidents.length)
			.map((step) => [step.after.incidents.at(-1)?.id, step]),
	);
	return last.incidents.map((one, place): ReportIncident => {
		const step = noted.get(one.id);
		const pedal = pedalOf(show, one);
		const item = step ? (songOnNow(step.before)?.item ?? null) : null;
		const next = step && item === null ? nextSongItem(step.before) : null;
		const before = step && one.instrument !== null ? step.before.instruments[one.instrument] : null;
		const { silenceSeconds } = one;
		return {
			id: place + 1,
			at: timeAt(one.atMs),
			position: item && positionOf(last.list, item),
			song: item && cleanText(songTitle(show, item.song)),
			playerId: one.player,
			instrumentId: one.instrument,
			standInId: one.standIn,
			stringHours: before ? stringHoursAt(before, one.atMs) : null,
			soundAt: silenceSeconds === null ? null : timeAt(one.atMs + silenceSeconds * 1000),
			isPlayedOn: steps.some(({ entry }) => entry.k === 'played-on' && entry.incident === one.id),
			isOpen: one.isOpen,
			later: laterCost(one, night),
			record: one.id,
			remark: remarkOrNull(remarks.incidents[one.id]),
			before: next && cleanText(songTitle(show, next.song)),
			kind: cleanText(one.kind ?? NOT_DESCRIBED),
			player: one.player && cleanText(playerName(show, one.player)),
			instrument: one.instrument && cleanText(shownInstrument(show, one.instrument)),
			string: one.string,
			pedal,
			standIn: one.standIn && cleanText(shownInstrument(show, one.standIn)),
			silenceSeconds: silenceSeconds === null ? null : tenths(silenceSeconds),
			words: [
				...(pedal === null ? [] : [stuckPedal(pedal)]),
				...[...faultWords(last, one), ...one.words].map(cleanText),
			],
		};
	});
}

function pedalOf(show: Show, { player, pedal }: Incident): string | null {
	return player === null || pedal === null ? null : cleanText(pedalName(show, player, pedal));
}

function laterCost(incident: Incident, { steps, last, others, timeAt }: Night): LaterCost {
	const { instrument, atMs } = incident;
	const backStep = steps.find((step) => step.entry.at >= atMs && isBack(incident, step));
	const back = backStep?.entry.at;
	const on = backStep === undefined ? null : (songOnNow(backStep.before)?.item ?? null);
	const next = backStep === undefined || on !== null ? null : nextSongItem(backStep.before);
	const ended = last.list
		.flatMap((item) => (item.kind === 'song' ? item.runs : []))
		.find(
			({ beganAtMs, endedAtMs }) => beganAtMs <= atMs && endedAtMs !== null && endedAtMs >= atMs,
		);
	return {
		backAt: back === undefined ? null : timeAt(back),
		backIn: on && {
			position: positionOf(last.list, on) || null,
			song: cleanText(songTitle(last.show, on.song)),
		},
		backBefore: next && cleanText(songTitle(last.show, next.song)),
		outSeconds: back === undefined ? null : secondsOf(back - atMs),
		songsOnOther:
			instrument === null
				? []
				: others
						.filter(
							(one) =>
								one.askedId === instrument && one.atMs >= atMs && one.atMs < (back ?? Infinity),
						)
						.map(({ item, song, played }) => ({ item, song, played })),
		isSongCutShort: ended?.how === 'cut-short',
	};
}

/** Whether by this step what broke or did not switch was as it should be again. */
function isBack(incident: Incident, { entry }: NightStep): boolean {
	const { kind, instrument, player, pedal } = incident;
	if (entry.k === 'pedal-freed') return entry.player === player && entry.pedal === pedal;
	return (
		entry.k === 'made-ready' &&
		entry.instrument === instrument &&
		(kind === 'string-break' ? entry.isRestrung === true : entry.isEarly !== true)
	);
}

function faultWords(last: Session, { id }: Incident): readonly string[] {
	return last.faults
		.filter(({ incident }) => incident === id)
		.flatMap((fault) => triedWords(last, fault));
}
