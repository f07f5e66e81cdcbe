// Commands about tonight's list: what may be moved, put in, dropped. What was played and what is on
// stay where they are.

import type { Entry } from '../journal/entry.ts';
import type { Show } from '../showfile/show.ts';
import { showRecord } from '../showfile/show-record.ts';
import type { Command } from './command.ts';
import { type Decision, no, yes } from './decision.ts';
import { findInstrument, findItem, findSong, isBehind, songOnNow } from './find.ts';
import { withIntervalBegun } from './interval-begun.ts';
import { readAgain } from './read-again.ts';
import type { Refusal } from './refusal.ts';
import type { Session, SongItem } from './session.ts';
import { encoreEnd, placeNow, placesFor, type SetPlace } from './set-places.ts';

type Asked<Name extends Command['do']> = Extract<Command, { do: Name }>;

/** A song that is not on and was not played to another place in what is to come. */
export function moveSong(session: Session, asked: Asked<'move-song'>, atMs: number): Decision {
	return placesFor(session, asked.item).some((place) => isSamePlace(place, asked))
		? moveTo(session, asked, atMs)
		: no({ code: 'behind-what-is-on' });
}

/** A song of the catalogue, on the list or not, into what is to come. */
export function insertSong(session: Session, asked: Asked<'insert-song'>, atMs: number): Decision {
	if (findSong(session, asked.song) === null) return no({ code: 'unknown-song' });
	if (!placesFor(session, null).some((place) => isSamePlace(place, asked)))
		return no({ code: 'behind-what-is-on' });
	return changed(session, insertedEntry(asked, atMs));
}

/** Off tonight's list. */
export function dropSong(session: Session, key: string, atMs: number): Decision {
	const found = movable(session, key);
	if ('why' in found) return no(found.why);
	if (found.item.isDropped) return no({ code: 'dropped-already', song: found.item.song });
	return changed(session, { k: 'song-dropped', at: atMs, item: key });
}

/** On the list again: in its place where that is still to come, else next. */
export function restoreSong(session: Session, key: string, atMs: number): Decision {
	const found = movable(session, key);
	if ('why' in found) return no(found.why);
	if (!found.item.isPassedOver) return no({ code: 'listed-already', song: found.item.song });
	const [first] = placesFor(session, key);
	return isBehind(session, key) && first
		? changed(session, movedEntry(first, key, atMs))
		: changed(session, { k: 'song-restored', at: atMs, item: key });
}

/** What a player has in one song tonight; null: what the song says. */
export function nameTonight(
	session: Session,
	{ item: key, player, part }: Asked<'name-tonight'>,
	atMs: number,
): Decision {
	const found = movable(session, key);
	if ('why' in found) return no(found.why);
	const { show } = session;
	if (!show.players.some(({ id }) => id === player)) return no({ code: 'unknown-player' });
	if (part?.kind === 'named' && findInstrument(session, part.instrument) === null) {
		return no({ code: 'unknown-instrument' });
	}
	const now = Object.hasOwn(found.item.tonight, player) ? found.item.tonight[player] : null;
	return JSON.stringify(now) === JSON.stringify(part)
		? no({ code: 'named-already', player })
		: yes({ k: 'named-tonight', at: atMs, item: key, player, part });
}

/** To the end of the encore. */
export function playInEncore(session: Session, key: string, atMs: number): Decision {
	const item = findItem(session, key);
	if (item?.kind !== 'song') return no({ code: 'encore-takes-songs' });
	const place = encoreEnd(session, key);
	if (item.runs.length > 0)
		return changed(session, insertedEntry({ song: item.song, ...place }, atMs));
	return moveTo(session, { item: key, ...place }, atMs);
}

/** The show as its file is now. */
export function readShowAgain(session: Session, show: Show, atMs: number): Decision {
	const after = readAgain(session, show);
	return JSON.stringify(after.show) === JSON.stringify(session.show)
		? no({ code: 'nothing-new-in-file' })
		: changed(session, { k: 'show-read-again', at: atMs, show: showRecord(show) });
}

function moveTo(
	session: Session,
	{ item: key, ...place }: SetPlace & { readonly item: string },
	atMs: number,
): Decision {
	const found = movable(session, key);
	if ('why' in found) return no(found.why);
	const now = placeNow(session, key);
	return now !== null && isSamePlace(now, place)
		? no({ code: 'there-already', song: found.item.song })
		: changed(session, movedEntry(place, key, atMs));
}

/** Why this item of the list stays where it is; null where it can be moved. */
export function whyFixed(session: Session, key: string): Refusal | null {
	const found = movable(session, key);
	return 'why' in found ? found.why : null;
}

function changed(session: Session, entry: Entry): Decision {
	return yes(...withIntervalBegun(session, [entry]));
}

function movedEntry({ before, isEncore }: SetPlace, item: string, at: number): Entry {
	return { k: 'song-moved', at, item, before, isEncore };
}

function insertedEntry(
	{ song, before, isEncore }: SetPlace & { readonly song: string },
	at: number,
): Entry {
	return { k: 'song-inserted', at, song, before, isEncore };
}

function isSamePlace(one: SetPlace, other: SetPlace): boolean {
	return one.before === other.before && one.isEncore === other.isEncore;
}

/** The song, where it can still be placed; else why not. */
function movable(
	session: Session,
	key: string,
): { readonly item: SongItem } | { readonly why: Refusal } {
	const item = findItem(session, key);
	if (item === null) return { why: { code: 'not-on-list' } };
	if (item.kind === 'interval') return { why: { code: 'interval-stays' } };
	const { song } = item;
	if (songOnNow(session)?.item.key === key) return { why: { code: 'on-now', song } };
	return item.runs.some(({ how }) => how !== 'skipped')
		? { why: { code: 'played', song } }
		: { item };
}
