// A show as it stands before the doors: everything on the rack, wiped, without a capo, in the file's tuning
// and just made ready at zero, an hour of the technician's time before it, and the whole set to come.

import type { Cue, Instrument, Part, Show, Song } from '../../../src/showfile/show.ts';
import type { Cell, Demand, Gear, LiveState, Section } from './live-state.ts';
import { pitchesOf } from './sounding.ts';

const HOUR = 3600;
const GAP = 15;
const GAP_BEFORE_ENCORE = 60;
const LENGTH_OF_ALL_UNKNOWN = 240;
/** Strings with less than this in hands are new. */
const NEW_HOURS = 1;

/** The state from which the plan before the doors is made. */
export function stateBeforeDoors(show: Show): LiveState {
	return {
		now: -HOUR,
		players: show.players.map(({ id }) => ({
			id,
			holds: null,
			putDown: null,
			hasBegun: false,
		})),
		gear: show.instruments.map((instrument) => freshGear(show, instrument)),
		sections: sectionsOf(show),
		whenMissing: 'empties',
		told: {},
		worked: null,
	};
}

/** An instrument as a night begins with it. */
function freshGear(show: Show, instrument: Instrument): Gear {
	return {
		instrument,
		canBeHad: true,
		open: pitchesOf(instrument.tuning),
		capo: 0,
		isToWipe: false,
		readyAt: 0,
		backAt: null,
		stringsDown: 0,
		restrungFor: null,
		recheck: recheckOf(show, instrument, instrument.strung.hours),
		recheckNew: show.staleNewSeconds,
	};
}

/**
 * How long "ready" lasts on an instrument whose strings have been in hands for so many hours (null: nobody
 * knows): new strings by the show's figure for them, else its own figure, else the show's.
 */
export function recheckOf(show: Show, instrument: Instrument, hours: number | null): number {
	if (hours !== null && hours < NEW_HOURS) return show.staleNewSeconds;
	return instrument.recheckAfterSeconds ?? show.staleAfterSeconds;
}

/** The whole set as sections, by the file's own figures; zero is the first song's start. */
function sectionsOf(show: Show): readonly Section[] {
	const songs = new Map(show.songs.map((song) => [song.id, song]));
	const above = new Map<string, Demand>();
	const sections: Section[] = [];
	let before: { song: Song; end: number; isEncore: boolean } | null = null;
	let interval: number | null = null;
	for (const [place, item] of show.set.entries()) {
		if (item.kind === 'interval') {
			interval = item.seconds;
			continue;
		}
		const song = songs.get(item.song)!;
		const gap: number = item.gapSeconds ?? gapBefore(before, item.isEncore);
		const start: number = before === null ? 0 : before.end + (interval ?? gap);
		const end: number = start + lengthOf(show, song);
		const points = [{ at: start, parts: song.parts, cue: null }, ...handCues(song, start, end)];
		for (const [index, { at, parts, cue }] of points.entries()) {
			sections.push({
				key: index === 0 ? `${place}` : `${place}.${index}`,
				start: at,
				previousEnd: cue !== null ? at : (before?.end ?? -HOUR),
				gap: cue !== null || before === null || interval !== null ? null : gap,
				isCue: cue !== null,
				isAfterInterval: cue === null && interval !== null,
				isOn: false,
				cells: cellsOf(show, parts, above),
				boardCues: index === 0 ? boardCues(song, start) : [],
			});
		}
		before = { song, end, isEncore: item.isEncore };
		interval = null;
	}
	return sections;
}

/** Seconds before a song where the file gives none; `before` null for the first. */
export function gapBefore(
	before: { readonly song: Pick<Song, 'ends'>; readonly isEncore: boolean } | null,
	isEncore: boolean,
): number {
	if (before === null) return 0;
	if (isEncore && !before.isEncore) return GAP_BEFORE_ENCORE;
	return before.song.ends === 'segue' ? 0 : GAP;
}

/** Seconds that a song is expected to last. */
export function lengthOf(show: Show, song: Song): number {
	if (song.lengthSeconds !== null) return song.lengthSeconds;
	const given = show.songs.flatMap(({ lengthSeconds }) => lengthSeconds ?? []);
	if (given.length === 0) return LENGTH_OF_ALL_UNKNOWN;
	given.sort((a, b) => a - b);
	const half = given.length / 2;
	return (given[Math.ceil(half) - 1]! + given[Math.floor(half)]!) / 2;
}

type HandCue = { readonly at: number; readonly parts: Song['parts']; readonly cue: Cue };

/** Cues that hand over, each at its `near`; those without share equally the room between their neighbours. */
export function handCues(song: Song, start: number, end: number): readonly HandCue[] {
	const cues = song.cues.filter(({ hand }) => Object.keys(hand).length > 0);
	const known = cues.map(({ nearSeconds }) => (nearSeconds === null ? null : start + nearSeconds));
	const placed: HandCue[] = [];
	for (const [index, cue] of cues.entries()) {
		const from = placed[index - 1]?.at ?? start;
		const ahead = known.slice(index).findIndex((at) => at !== null);
		const to = ahead < 0 ? end : known[index + ahead]!;
		const parts = (ahead < 0 ? cues.length - index : ahead) + 1;
		placed.push({ at: known[index] ?? from + (to - from) / parts, parts: cue.hand, cue });
	}
	return placed;
}

/** When the technician presses for boards in a song that begins then. */
export function boardCues(song: Song, start: number): readonly number[] {
	return song.cues.flatMap(({ nearSeconds, boards }) =>
		nearSeconds !== null && Object.keys(boards).length > 0 ? [start + nearSeconds] : [],
	);
}

/** Each player's cell here; what is said here stands above for what follows. */
function cellsOf(
	show: Show,
	parts: Readonly<Record<string, Part>>,
	above: Map<string, Demand>,
): Readonly<Record<string, Cell>> {
	const cells: Record<string, Cell> = {};
	for (const { id } of show.players) {
		const part = parts[id];
		if (part !== undefined) above.set(id, demandOf(show, part));
		cells[id] = { demand: above.get(id) ?? { kind: 'keep' }, isAsAbove: part === undefined };
	}
	return cells;
}

/** A part of the show file as a demand, its notes read. */
export function demandOf(show: Show, part: Part): Demand {
	if (part.kind === 'none') return { kind: 'none' };
	if (part.kind === 'needs') {
		const { instrumentKind, features, prefer } = part;
		return { kind: 'needs', instrumentKind, sounds: pitchesOf(part.sounds), features, prefer };
	}
	const { instrument, capo } = part;
	const own = show.instruments.find(({ id }) => id === instrument)!.tuning;
	return { kind: 'named', instrument, open: pitchesOf(part.tuning ?? own), capo };
}
