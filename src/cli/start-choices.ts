// What a start without a command offers, the most likely first, and which of it a key opens.

import { basename } from 'node:path';
import type { NightSummary } from '../disk/nights-folder.ts';
import type { StartItem } from '../screen/start-page.ts';
import { findSongItem, positionOf, songsOf } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { dayText } from '../words/paper.ts';
import {
	ALL_PLAYED,
	afterSong,
	atSong,
	begunAt,
	HOW_FAR_UNKNOWN,
	NOT_BEGUN,
	START,
	startDetail,
	startsAt,
} from '../words/start-page.ts';
import { isFinished } from './nights/night-on-disk.ts';

/** What is opened. */
export type Opening =
	| { readonly kind: 'show'; readonly file: string }
	/** A command of this name, of a night. */
	| { readonly kind: 'night'; readonly name: 'report' | 'tomorrow'; readonly night: string }
	| { readonly kind: 'command'; readonly name: string };

export type Choice = Omit<StartItem, 'key'> & { readonly opens: Opening };

/** A show file that can be opened. */
export type OfferedShow = {
	readonly file: string;
	readonly isToday: boolean;
	/** Null where the file cannot be read as it is. */
	readonly show: {
		readonly title: string;
		readonly date: string | null;
		readonly startMinutes: number | null;
	} | null;
};

export type StartSources = {
	/** The newest first. */
	readonly nights: readonly NightSummary[];
	/** How a night stands; null where that cannot be read. */
	readonly standsAt: (night: NightSummary) => Session | null;
	/** Shows of today, then the one opened last. */
	readonly shows: readonly OfferedShow[];
	/** The night whose report is offered. */
	readonly played: NightSummary | null;
	readonly example: string;
	/** A moment as it is said today. */
	readonly moment: (atMs: number) => string;
	readonly hasCommand: (name: string) => boolean;
};

/** So many nights left open are offered; whoever has more looks for one by name. */
const MOST_UNFINISHED = 3;

/** Nights left open, shows, a new one, the last report and what it leaves for tomorrow, the example; each show file once. */
export function startChoices(sources: StartSources): readonly Choice[] {
	const { shows, played, example, hasCommand } = sources;
	const open = unfinished(sources.nights).slice(0, MOST_UNFINISHED);
	const ofShows: Choice[] = [
		...open.map((night) => resumed(night, sources)),
		...shows.filter(({ file }) => file !== example).map(offered),
		{
			label: START.example,
			detail: START.exampleAbout,
			opens: { kind: 'show', file: example },
		},
	];
	const once = ofShows.filter(
		({ opens }, index) => ofShows.findIndex((one) => sameFile(one.opens, opens)) === index,
	);
	const isExample = ({ label }: Choice) => label === START.example;
	return [
		...once.filter((one) => !isExample(one)),
		...(hasCommand('new') ? [ofCommand('new', START.newShow, START.newAbout)] : []),
		...(played === null ? [] : afterNight(played, sources)),
		...once.filter(isExample),
		...(hasCommand('walk') ? [ofCommand('walk', START.walk, START.walkAbout)] : []),
	];
}

/** The report of the night that was played last; and what tomorrow needs, once it is over. */
function afterNight(
	{ id, header, startedAtMs, lastRecords }: NightSummary,
	{ moment, hasCommand }: StartSources,
): readonly Choice[] {
	const isOver = isFinished(lastRecords);
	const detail = startDetail(
		header?.title ?? null,
		startedAtMs === null ? null : moment(startedAtMs),
	);
	const report: Choice = {
		label: isOver ? START.report : START.reportSoFar,
		detail,
		opens: { kind: 'night', name: 'report', night: id },
	};
	if (!isOver || !hasCommand('tomorrow')) return [report];
	return [
		report,
		{
			label: START.tomorrow,
			detail: START.tomorrowAbout,
			opens: { kind: 'night', name: 'tomorrow', night: id },
		},
	];
}

/** How many nights left open are not among the choices. */
export function unofferedCount(nights: readonly NightSummary[]): number {
	return Math.max(0, unfinished(nights).length - MOST_UNFINISHED);
}

/** The newest night left open of each show; rehearsals are left as they are. */
function unfinished(nights: readonly NightSummary[]): readonly NightSummary[] {
	const open = nights.filter(
		({ header, lastRecords }) =>
			header !== null && !header.isRehearsal && header.showPath !== '' && !isFinished(lastRecords),
	);
	return open.filter(
		({ header }, index) =>
			open.findIndex((one) => one.header?.showPath === header?.showPath) === index,
	);
}

function resumed(night: NightSummary, { standsAt, moment, example }: StartSources): Choice {
	const { header, startedAtMs } = night;
	const begun = startedAtMs === null ? null : begunAt(moment(startedAtMs));
	return {
		label: START.resume(header?.title ?? night.id),
		detail: startDetail(
			header?.showPath === example ? START.isExample : null,
			begun,
			howFar(standsAt(night)),
		),
		opens: { kind: 'show', file: header?.showPath ?? '' },
	};
}

function howFar(session: Session | null): string {
	if (session === null) return HOW_FAR_UNKNOWN;
	const item = findSongItem(session, session.current);
	if (item === null) return NOT_BEGUN;
	if (session.phase.value === 'over') return ALL_PLAYED;
	const title = session.show.songs.find(({ id }) => id === item.song)?.title ?? item.song;
	const words = session.phase.value === 'song' ? atSong : afterSong;
	return words(positionOf(session.list, item), songsOf(session.list).length, title);
}

function offered({ file, isToday, show }: OfferedShow): Choice {
	const name = basename(file);
	const start = show?.startMinutes ?? null;
	const label = isToday ? START.tonight : START.lastShow;
	const opens = { kind: 'show', file } as const;
	if (show === null) return { label: label(name), detail: START.unread, opens };
	return {
		label: label(show.title),
		detail: startDetail(
			isToday ? null : show.date,
			start === null ? null : startsAt(dayText(start)),
			name,
		),
		opens,
	};
}

function ofCommand(name: string, label: string, detail: string): Choice {
	return { label, detail, opens: { kind: 'command', name } };
}

function sameFile(one: Opening, other: Opening): boolean {
	return one.kind === 'show' && other.kind === 'show' && one.file === other.file;
}

/** The choices with their keys: numbers from 1, `?` for the walk. */
export function startItems(choices: readonly Choice[]): readonly StartItem[] {
	return choices.map(({ label, detail, opens }, index) => ({
		key: opens.kind === 'command' && opens.name === 'walk' ? '?' : String(index + 1),
		label,
		detail,
	}));
}

/** What a key does on the page: which item is picked then, and whether it is opened or all is left. */
export type PageStep = { readonly picked: number; readonly done: 'open' | 'leave' | null };

/** The page after a key. */
export function pressOnPage(items: readonly StartItem[], picked: number, key: string): PageStep {
	const named = items.findIndex((one) => one.key === key);
	if (named >= 0) return { picked: named, done: 'open' };
	switch (key) {
		case 'enter':
			return { picked, done: 'open' };
		case 'esc':
		case 'q':
		case 'Q':
			return { picked, done: 'leave' };
		case 'up':
			return { picked: Math.max(0, picked - 1), done: null };
		case 'down':
			return { picked: Math.min(items.length - 1, picked + 1), done: null };
		default:
			return { picked, done: null };
	}
}
