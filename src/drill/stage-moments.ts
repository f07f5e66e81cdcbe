// The moments of the trade, each set up in a night that is going as planned: from where one looks on, what then
// happens, what is right. What a show cannot give in this song is null.

import { findSong, nextSongItem, songOnNow } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { comingItems } from '../session/set-places.ts';
import { wearersOf } from '../session/shared-packs.ts';
import {
	packName,
	pedalName,
	playerName,
	shownInstrument,
	songTitle,
} from '../showfile/shown-names.ts';
import {
	audibleWords,
	type DrillKind,
	packWords,
	skipWords,
	stuckPedalWords,
	twoPlayersWords,
	wrongGuitarWords,
} from '../words/drill.ts';
import { breakRetune, secondBreak } from './break-moments.ts';
import {
	ALL_HANDED_KEYS,
	jumpKeys,
	packKeys,
	SKIP_KEYS,
	stuckKeys,
	swapKeys,
} from './right-keys.ts';
import { hands, type Stage } from './stage.ts';
import { wrongFor } from './wrong-for.ts';

const audible: Stage = {
	isBetweenSongs: false,
	happens: ({ trial, by, keyOf }) => {
		const session = trial.night.session();
		const { show } = session;
		const [next, ...later] = comingItems(session).filter((item) => item.kind === 'song');
		const listed = session.list.flatMap((item) => (item.kind === 'song' ? [item.song] : []));
		const called = [
			...later.map(({ song }) => song),
			...show.songs.map(({ id }) => id).filter((id) => !listed.includes(id)),
		].filter((id) => id !== next?.song && id !== songOnNow(session)?.song.id);
		for (const id of by.shuffled(called)) {
			const song = findSong(session, id);
			const keys = song && jumpKeys(keyOf, session, song);
			if (!keys) continue;
			const [caller] = by.shuffled(show.players);
			return {
				words: audibleWords(caller?.name ?? '', song.title),
				keys,
				isAnswered: (now) => nextSongItem(now)?.song === id,
			};
		}
		return null;
	},
};

const skip: Stage = {
	isBetweenSongs: true,
	happens: ({ trial }) => {
		const session = trial.night.session();
		const [left, begun] = comingItems(session);
		if (left?.kind !== 'song' || begun?.kind !== 'song') return null;
		const { show } = session;
		return {
			words: skipWords(songTitle(show, left.song), songTitle(show, begun.song)),
			keys: SKIP_KEYS,
			isAnswered: (now) => songOnNow(now)?.item.key === begun.key,
		};
	},
};

const twoPlayers: Stage = {
	isBetweenSongs: true,
	happens: ({ trial }) => {
		const session = trial.night.session();
		const { show } = session;
		const item = nextSongItem(session);
		const given = trial.night
			.plan()
			.handOvers.filter(
				({ section, instrument }) =>
					instrument !== null && section.item === item?.key && section.point === 0,
			);
		if (item === null || given.length < 2) return null;
		return {
			words: twoPlayersWords(
				given.map(({ player }) => playerName(show, player)),
				songTitle(show, item.song),
				given.map(({ instrument }) => shownInstrument(show, instrument ?? '')),
			),
			keys: ALL_HANDED_KEYS,
			isAnswered: ({ players }) =>
				given.every(({ player, instrument }) => players[player]?.holds === instrument),
		};
	},
};

const pack: Stage = {
	isBetweenSongs: false,
	happens: (staged) => {
		const { trial, keyOf } = staged;
		const session = trial.night.session();
		const { show, suspectPacks, players } = session;
		const isFreeIn = (now: Session, id: string, player: string) =>
			!now.suspectPacks.includes(id) &&
			wearersOf(now, id).every((one) => one.id === player || now.players[one.id]?.holds === null);
		for (const { player } of hands(staged)) {
			const worn = players[player]?.pack ?? null;
			if (worn === null || suspectPacks.includes(worn)) continue;
			const free = show.packs.filter(({ id }) => id !== worn && isFreeIn(session, id, player));
			// One that nobody has on at all needs nobody's leave.
			const other = free.find(({ id }) => wearersOf(session, id).length === 0) ?? free[0] ?? null;
			const isFree = (now: Session, id: string | null) =>
				id !== null && id !== worn && isFreeIn(now, id, player);
			return {
				words: packWords(
					playerName(show, player),
					packName(show, worn),
					other && packName(show, other.id),
				),
				keys: packKeys(keyOf, session, { player, other: other?.id ?? null }),
				isAnswered: (now) =>
					now.suspectPacks.includes(worn) &&
					(other === null || isFree(now, now.players[player]?.pack ?? null)),
			};
		}
		return null;
	},
};

const wrongGuitar: Stage = {
	isBetweenSongs: false,
	happens: (staged) => {
		const { trial, keyOf } = staged;
		const session = trial.night.session();
		const { show } = session;
		for (const { player, instrument } of hands(staged)) {
			const holds = show.instruments.find(({ id }) => id === instrument);
			const taken = holds && wrongFor(session, { player, holds });
			if (!taken) continue;
			const name = shownInstrument(show, taken.id);
			return {
				words: wrongGuitarWords(playerName(show, player), name, shownInstrument(show, instrument)),
				keys: swapKeys(keyOf, session, { player, instrument: taken }),
				// Given as a backup for a string that broke, it is another answer, to another moment.
				isAnswered: ({ players, instruments }) =>
					players[player]?.holds === taken.id &&
					instruments[instrument]?.context.stringsDown.length === 0,
			};
		}
		return null;
	},
};

const stuckPedal: Stage = {
	isBetweenSongs: false,
	happens: ({ trial, by, keyOf }) => {
		const session = trial.night.session();
		const { show, boards } = session;
		const all = Object.entries(boards).flatMap(([player, { context }]) =>
			Object.keys(context.pedals)
				.filter((pedal) => !context.stuck.includes(pedal))
				.map((pedal) => ({ player, pedal })),
		);
		const [one] = by.shuffled(all);
		if (one === undefined) return null;
		const { player, pedal } = one;
		return {
			words: stuckPedalWords(playerName(show, player), pedalName(show, player, pedal)),
			keys: stuckKeys(keyOf, session, one),
			isAnswered: (now) => now.boards[player]?.context.stuck.includes(pedal) === true,
		};
	},
};

export const STAGES: Readonly<Record<DrillKind, Stage>> = {
	'break-retune': breakRetune,
	audible,
	skip,
	'two-players': twoPlayers,
	pack,
	'second-break': secondBreak,
	'wrong-guitar': wrongGuitar,
	'stuck-pedal': stuckPedal,
};
