// A night going on with its show read again. The past stays, what is in use stays in use, and what the
// file says of the rest counts from here on.

import { boardAtRest, instrumentAtLoadIn } from '../../machines/at-load-in.ts';
import type { InstrumentState } from '../../machines/instrument.ts';
import { cueIndex, cuePoints } from '../../machines/song.ts';
import { songAtPoint } from '../../machines/song-machine.ts';
import { NEW, type RecordId } from '../journal/record.ts';
import type { Instrument, Player, Show, Song } from '../showfile/show.ts';
import { withCellsAbove } from './cells.ts';
import { findSong, songOnNow } from './find.ts';
import { listReadAgain } from './list-read-again.ts';
import { EMPTY_HANDS, NONE_STAYING } from './open-session.ts';
import type { PlayerState, Session, SongItem } from './session.ts';
import { withList } from './show-phase.ts';
import { toldOfItems } from './told.ts';

/** An item that is gone may leave its key to a song put in later, for which nothing is settled. */
const NONE_SETTLED: Session['settled'] = { item: null, players: {} };

/** What of the show before stays although the file no longer has it, by id. */
export type StillInUse = {
	/** Played tonight, or on. */
	readonly songs: readonly Song[];
	/** In hands, or to be repaired. */
	readonly instruments: readonly Instrument[];
	/** With something in hands. */
	readonly players: readonly Player[];
};

/** What the night uses that the file no longer has. */
export function stillInUse(session: Session, read: Show): StillInUse {
	const { show, list, players } = session;
	const isGone =
		(there: readonly { readonly id: string }[]) =>
		({ id }: { readonly id: string }) =>
			!there.some((one) => one.id === id);
	const used = new Set(
		list.flatMap((item) =>
			item.kind === 'song' && (item.runs.length > 0 || item.key === session.current)
				? [item.song]
				: [],
		),
	);
	const holds = (id: string): string | null => players[id]?.holds ?? null;
	const held = new Set(Object.keys(players).map(holds));
	return {
		songs: show.songs.filter(isGone(read.songs)).filter(({ id }) => used.has(id)),
		instruments: show.instruments
			.filter(isGone(read.instruments))
			.filter(({ id }) => held.has(id) || isToRepair(session.instruments[id])),
		players: show.players.filter(isGone(read.players)).filter(({ id }) => holds(id) !== null),
	};
}

function isToRepair(state: InstrumentState | undefined): boolean {
	return state !== undefined && state.context.stringsDown.length + state.context.faults.length > 0;
}

/** The session from here on, by the show as it was read again. */
export function readAgain(session: Session, read: Show, of: RecordId | null = NEW): Session {
	const show = joined(read, stillInUse(session, read));
	const { list: kept, next } = listReadAgain(session, show, of);
	const list = withCellsAbove(kept, show).map((item) =>
		item.kind === 'song' ? { ...item, tonight: {} } : item,
	);
	const on = songOnNow(session);
	const going = { ...session, show };
	const changed: Session = {
		...going,
		song: on && session.song ? songGoingOn(on, session, show) : session.song,
		instruments: instrumentsOf(going),
		players: playersOf(going),
		boards: boardsOf(going),
		told: toldOfItems(session, list),
		settled: list.some(({ key }) => key === session.settled.item) ? session.settled : NONE_SETTLED,
		staying: list.some(({ key }) => key === session.staying.item) ? session.staying : NONE_STAYING,
	};
	return withList(changed, list, next);
}

/** The show as read, and what is still in use beside it; slots and letters are the file's first. */
function joined(read: Show, kept: StillInUse): Show {
	const slots = new Set(read.instruments.map(({ slot }) => slot?.toLowerCase()));
	const letters = new Set([...slots, ...read.players.map(({ key }) => key)]);
	const letterFor = (player: Player): string => {
		const free = [player.key, ...'abcdefghijklmnopqrstuvwxyz'].find((one) => !letters.has(one));
		letters.add(free ?? player.key);
		return free ?? player.key;
	};
	return {
		...read,
		songs: [...read.songs, ...kept.songs],
		instruments: [
			...read.instruments,
			...kept.instruments.map((one) =>
				one.slot !== null && slots.has(one.slot.toLowerCase()) ? { ...one, slot: null } : one,
			),
		],
		players: [
			...read.players,
			...kept.players.map((player) => ({ ...player, key: letterFor(player) })),
		],
	};
}

/** The song on now at the same cue point: the one of its name, else as many points in. */
function songGoingOn(
	on: { readonly item: SongItem; readonly song: Song },
	session: Session,
	show: Show,
): Session['song'] {
	const index = session.song ? cueIndex(session.song) : null;
	const song = findSong({ ...session, show }, on.item.song);
	if (index === null || song === null || song === on.song) return session.song;
	const at = cuePoints(on.song)[index]?.at;
	const points = cuePoints(song);
	const same = points.findIndex((point) => point.at === at);
	return songAtPoint(song, same < 0 ? Math.min(index, points.length - 1) : same);
}

/** Each instrument as it is believed to be; new ones, and those with another number of strings, as at the load-in. */
function instrumentsOf({ show, instruments }: Session): Session['instruments'] {
	return Object.fromEntries(
		show.instruments.map((one) => {
			const state = instruments[one.id];
			if (state === undefined) return [one.id, instrumentAtLoadIn(one)];
			const hasSameStrings = state.context.tuning.notes.length === one.tuning.notes.length;
			if (hasSameStrings) return [one.id, state];
			const { inHandsSinceMs } = state.context;
			const fresh = instrumentAtLoadIn(one);
			return [
				one.id,
				{ ...fresh, value: state.value, context: { ...fresh.context, inHandsSinceMs } },
			];
		}),
	);
}

function playersOf({ show, players }: Session): Session['players'] {
	const isThere = (id: string | null | undefined): boolean =>
		show.instruments.some((one) => one.id === id);
	return Object.fromEntries(
		show.players.map(({ id }): [string, PlayerState] => {
			const state = players[id];
			if (state === undefined) return [id, EMPTY_HANDS];
			const { putDown, correctable } = state;
			return [
				id,
				{
					...state,
					putDown: isThere(putDown) ? putDown : null,
					correctable:
						correctable && (correctable.given === null || isThere(correctable.given))
							? correctable
							: null,
				},
			];
		}),
	);
}

function boardsOf({ show, boards }: Session): Session['boards'] {
	return Object.fromEntries(
		Object.entries(show.boards).map(([player, listed]) => {
			const rest = boardAtRest(listed);
			const before = boards[player];
			if (before === undefined) return [player, rest];
			const believed = Object.entries(rest.context.pedals).map(([id, off]) => [
				id,
				before.context.pedals[id] ?? off,
			]);
			const pedals = Object.fromEntries(believed);
			const stuck = before.context.stuck.filter((id) => Object.hasOwn(pedals, id));
			return [player, { ...before, context: { pedals, stuck } }];
		}),
	);
}
