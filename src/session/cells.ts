// What each item of tonight's list asks of each player: what its song says, or, where that says nothing, what
// the song above it in the file's list says. The item carries it, so that a song that is moved, reached by a
// jump or put in still wants it.

import { cuePoints } from '../../machines/song.ts';
import type { Part, SetItem, Show, Song } from '../showfile/show.ts';
import { findSong } from './find.ts';
import type { ListItem, Session, SongItem } from './session.ts';

/** What a player is asked at a point of a list item. */
export type Cell = {
	/** Null where nothing says it: they keep what they have. */
	readonly part: Part | null;
	/** The song, a cue of it or the technician names the player; else it is the cell above, repeated. */
	readonly isNamed: boolean;
	/** It is the middle of a song, at a cue that hands this player nothing: what they have goes on. */
	readonly goesOnWithin: boolean;
};

/** Where in tonight's list; point 0 is the song's start. */
export type CellAt = { readonly item: SongItem; readonly point: number; readonly player: string };

/**
 * The cell of this item at this point for this player.
 *
 * @example
 * cellAt(session, { item: session.list[1], point: 0, player: 'cleo' }).isNamed // => false
 */
export function cellAt(session: Session, { item, point, player }: CellAt): Cell {
	const song = findSong(session, item.song);
	const points = song === null ? [] : cuePoints(song);
	const goesOnWithin = point > 0 && !has(points[point]?.hand, player);
	const handed = points.slice(1, point + 1).findLast(({ hand }) => has(hand, player));
	const part =
		handed?.hand[player] ??
		(has(item.tonight, player) ? item.tonight[player] : undefined) ??
		(has(song?.parts, player) ? song?.parts[player] : undefined);
	if (part !== undefined) return { part, isNamed: true, goesOnWithin };
	return { part: item.above[player] ?? null, isNamed: false, goesOnWithin };
}

/** What stands above an item, by player. */
export type Above = SongItem['above'];

/** For each item of the file's list what stands above it, by player: the last that a song or a cue before it says. */
function cellsAbove({ set, songs }: Pick<Show, 'set' | 'songs'>): readonly Above[] {
	let above: Above = {};
	return set.map((item) => {
		const here = above;
		if (item.kind === 'song') above = { ...above, ...lastOf(songs, item.song) };
		return here;
	});
}

function lastOf(songs: readonly Song[], id: string): Above {
	const song = songs.find((one) => one.id === id);
	return song === undefined ? {} : (cuePoints(song).at(-1)?.parts ?? {});
}

/** What an item of this song carries where the file's list does not say for which of its places it stands. */
export function aboveSong(show: Pick<Show, 'set' | 'songs'>, song: string): Above {
	return cellsAbove(show)[placesOf(show.set, song)[0] ?? -1] ?? {};
}

/** The list with what the file's list says above each item, the same song's places taken in turn. */
export function withCellsAbove(
	list: readonly ListItem[],
	show: Pick<Show, 'set' | 'songs'>,
): readonly ListItem[] {
	const cells = cellsAbove(show);
	const taken = new Map<string, number>();
	return list.map((item) => {
		if (item.kind === 'interval') return item;
		const places = placesOf(show.set, item.song);
		const turn = taken.get(item.song) ?? 0;
		taken.set(item.song, turn + 1);
		return { ...item, above: cells[places[turn] ?? places.at(-1) ?? -1] ?? {} };
	});
}

function placesOf(set: readonly SetItem[], song: string): readonly number[] {
	return set.flatMap((item, place) => (item.kind === 'song' && item.song === song ? [place] : []));
}

function has(parts: Readonly<Record<string, Part>> | undefined, player: string): boolean {
	return parts !== undefined && Object.hasOwn(parts, player);
}
