// What is on and what is to come of a night under way, by the model: when each song begins and ends, and which
// room there is before it. Seconds, counted from a moment that the caller chooses.

import type { ListItem, Session, SongItem } from '../../../src/session/session.ts';
import type { Song } from '../../../src/showfile/show.ts';
import { boardCues, gapBefore, handCues, lengthOf } from './before-doors.ts';
import type { Section } from './live-state.ts';

/** A section without what it asks of whom, and where in its song and in the night's list it stands. */
export type PlacedSection = Omit<Section, 'cells'> & {
	readonly item: SongItem;
	readonly song: Song;
	/** The cue point at which it begins; 0 at the song's start. */
	readonly point: number;
};

export type NightAt = {
	readonly session: Session;
	/** Seconds of a moment of the night. */
	readonly secondsOf: (ms: number) => number;
	readonly now: number;
	/** When the first song is to begin, as long as it has not. */
	readonly plannedZero: number;
};

/** The song that is on from its present section, then the list. */
export function sectionsOfNight(night: NightAt): readonly PlacedSection[] {
	const { session, now, secondsOf } = night;
	const on = songIsOn(session) ? currentItem(session) : null;
	const sections: PlacedSection[] = on === null ? [] : [...presentSections(night, on)];
	const current = currentItem(session);
	let before = current;
	const lastEnd = current?.runs.at(-1)?.endedAtMs ?? null;
	let end = on !== null ? endOfPresent(night, on) : lastEnd === null ? null : secondsOf(lastEnd);
	let interval = intervalThatIsOn(session);
	for (const item of ahead(session)) {
		if (item.kind === 'interval') {
			interval = (interval ?? 0) + item.seconds;
			continue;
		}
		const song = songOf(session, item);
		const gap = before === null ? 0 : gapOf(session, before, item);
		const planned = end === null ? night.plannedZero : end + (interval ?? gap);
		const start = Math.max(planned, now);
		sections.push(...split(night, { item, song, start, previousEnd: end, interval }));
		end = start + lengthOf(session.show, song);
		before = item;
		interval = null;
	}
	return sections.map((section, i) => ({
		...section,
		key: `${i} ${section.item.key} ${section.point}`,
	}));
}

function songIsOn({ phase }: Session): boolean {
	return phase.value === 'song';
}

function currentItem({ list, current }: Session): SongItem | null {
	const item = list.find(({ key }) => key === current);
	return item?.kind === 'song' ? item : null;
}

function songOf({ show }: Session, { song }: SongItem): Song {
	return show.songs.find(({ id }) => id === song)!;
}

function ahead({ list, next }: Session): readonly ListItem[] {
	const from = list.findIndex(({ key }) => key === next);
	if (from < 0) return [];
	return list.slice(from).filter((item) => item.kind === 'interval' || !item.isPassedOver);
}

/** Seconds of the interval that is on; null where none is. It is the first after the song that was on last. */
function intervalThatIsOn({ phase, list, current }: Session): number | null {
	if (phase.value !== 'interval') return null;
	const from = list.findIndex(({ key }) => key === current);
	const item = list.slice(from + 1).find(({ kind }) => kind === 'interval');
	return item?.kind === 'interval' ? item.seconds : 0;
}

/** A segue holds between songs that stand next to each other in the file's list. */
function gapOf({ show }: Session, before: SongItem, item: SongItem): number {
	const isNeighbour = show.set.some((one, place) => {
		const after = show.set[place + 1];
		return (
			one.kind === 'song' &&
			after?.kind === 'song' &&
			one.song === before.song &&
			after.song === item.song
		);
	});
	const song = show.songs.find(({ id }) => id === before.song)!;
	const ends = isNeighbour ? song.ends : 'stop';
	return (
		item.gapSeconds ??
		gapBefore({ song: { ...song, ends }, isEncore: before.isEncore }, item.isEncore)
	);
}

type Split = {
	readonly item: SongItem;
	readonly song: Song;
	readonly start: number;
	readonly previousEnd: number | null;
	readonly interval: number | null;
};

const HOUR = 3600;

/** Moments of a night are whole milliseconds. */
function toMs(seconds: number): number {
	return Math.round(seconds * 1000) / 1000;
}

function split(
	{ session, now }: NightAt,
	{ item, song, start, previousEnd, interval }: Split,
): readonly PlacedSection[] {
	const end = start + lengthOf(session.show, song);
	const common = { key: '', item, song, isOn: false };
	return [
		{
			...common,
			point: 0,
			start,
			previousEnd: previousEnd ?? now - HOUR,
			gap: previousEnd === null || interval !== null ? null : toMs(start - previousEnd),
			isCue: false,
			isAfterInterval: interval !== null,
			boardCues: boardCues(song, start),
		},
		...handCues(song, start, end).map(({ at, cue }) => ({
			...common,
			point: pointOf(song, cue),
			start: at,
			previousEnd: at,
			gap: null,
			isCue: true,
			isAfterInterval: false,
			boardCues: [],
		})),
	];
}

function pointOf({ cues }: Song, cue: Song['cues'][number]): number {
	return cues.indexOf(cue) + 1;
}

function endOfPresent({ session, secondsOf, now }: NightAt, item: SongItem): number {
	const began = secondsOf(item.runs.at(-1)!.beganAtMs);
	return Math.max(began + lengthOf(session.show, songOf(session, item)), now);
}

/** The point that the song that is on has reached. */
function pointReached({ song }: Session): number {
	return song === null ? 0 : Number(String(song.value).replace('point-', ''));
}

function presentSections(night: NightAt, item: SongItem): readonly PlacedSection[] {
	const { session, now, secondsOf } = night;
	const song = songOf(session, item);
	const reached = pointReached(session);
	const start = secondsOf(item.runs.at(-1)!.beganAtMs);
	const ended = session.list
		.flatMap((one) => (one.kind === 'song' ? one.runs : []))
		.flatMap(({ endedAtMs }) => (endedAtMs === null ? [] : [secondsOf(endedAtMs)]))
		.filter((end) => end <= start);
	const previousEnd = ended.length === 0 ? null : Math.max(...ended);
	const all = split(night, { item, song, start, previousEnd, interval: null });
	const present = all.findLastIndex(({ point }) => point <= reached);
	const board = song.cues.flatMap(({ nearSeconds, boards }, i) =>
		i + 1 > reached && nearSeconds !== null && Object.keys(boards).length > 0
			? [start + nearSeconds]
			: [],
	);
	return all.slice(present).map((section, i) => {
		const begins = i === 0 ? Math.min(section.start, now) : Math.max(section.start, now);
		return {
			...section,
			start: begins,
			previousEnd: section.isCue ? begins : section.previousEnd,
			gap: null,
			isOn: i === 0,
			// At a cue that was reached there is no hurry any more: a player moves a capo.
			isCue: section.isCue && i > 0,
			boardCues: i === 0 ? board : [],
		};
	});
}
