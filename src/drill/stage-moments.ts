// The moments of the trade, each set up in a night that is going as planned: from where one looks on, what then
// happens, what is right. What a show cannot give in this song is null.

import { standInsWithCosts } from '../plan/backups/stand-in-costs.ts';
import { samePitches } from '../plan/demand/same-pitches.ts';
import type { StandIn } from '../plan/plan.ts';
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
	breakHappens,
	breakRight,
	type DrillKind,
	packWords,
	skipWords,
	stuckPedalWords,
	twoPlayersWords,
	wrongGuitarWords,
} from '../words/drill.ts';
import { LED_BY } from '../words/walk.ts';
import type { Chance } from './chance.ts';
import { type DrillMoment, LIMIT_SECONDS } from './moment.ts';
import {
	ALL_HANDED_KEYS,
	breakKeys,
	jumpKeys,
	type KeyOf,
	packKeys,
	SKIP_KEYS,
	stuckKeys,
	swapKeys,
} from './right-keys.ts';
import type { TrialNight } from './trial-night.ts';
import { wrongFor } from './wrong-for.ts';

/** What a moment is set up with: the night where it happens, chance, and the keys that the user has. */
export type Staged = { readonly trial: TrialNight; readonly by: Chance; readonly keyOf: KeyOf };

/** What happens there. */
export type Happening = Pick<DrillMoment, 'words' | 'keys' | 'isAnswered'>;

export type Stage = {
	/** While a song is on, or as soon as it has ended. */
	readonly isBetweenSongs: boolean;
	/** What has happened before one looks on; false where it cannot. */
	readonly before?: (staged: Staged) => boolean;
	readonly happens: (staged: Staged) => Happening | null;
};

/** Time for somebody to take the backup. */
const TAKEN_MS = 20_000;

type Held = { readonly player: string; readonly instrument: string };

/** Who has what in hands, in an order of chance. */
function hands({ trial, by }: Staged): readonly Held[] {
	const { show, players } = trial.night.session();
	const held = show.players.flatMap(({ id: player }) => {
		const instrument = players[player]?.holds ?? null;
		return instrument === null ? [] : [{ player, instrument }];
	});
	return by.shuffled(held);
}

/** The backups for what a player has in hands, best first, as they are offered so many seconds from now. */
function backups({ night }: TrialNight, player: string, inSeconds = 0): readonly StandIn[] {
	const session = night.session();
	return standInsWithCosts({
		session,
		plan: night.plan(),
		nowMs: night.nowMs() + inSeconds * 1000,
		plannedZeroMs: session.zeroAtMs ?? night.nowMs(),
		player,
	});
}

function isRetuned({ instruments }: Session, { instrument, tuning }: StandIn): boolean {
	const state = instruments[instrument];
	return state !== undefined && !samePitches(state.context.tuning, tuning);
}

/** A string breaks on what somebody has in hands; right is that it is logged, and the first backup in hands. */
function breaks(staged: Staged, isFit: (best: StandIn) => boolean): Happening | null {
	const { trial, by, keyOf } = staged;
	const session = trial.night.session();
	const { show } = session;
	for (const { player, instrument } of hands(staged)) {
		const [best] = backups(trial, player);
		if (best === undefined || !isFit(best)) continue;
		// Towards the end of its time another may come first.
		const [later] = backups(trial, player, LIMIT_SECONDS);
		const first = [best.instrument, ...(later ? [later.instrument] : [])];
		const count = session.incidents.length;
		return {
			words: {
				happens: breakHappens(
					1 + by.below(4),
					playerName(show, player),
					shownInstrument(show, instrument),
				),
				right: breakRight(shownInstrument(show, best.instrument)),
			},
			keys: breakKeys(keyOf, session, instrument),
			isAnswered: ({ incidents, players }) =>
				incidents
					.slice(count)
					.some((one) => one.kind === 'string-break' && one.instrument === instrument) &&
				first.includes(players[player]?.holds ?? ''),
		};
	}
	return null;
}

const breakRetune: Stage = {
	isBetweenSongs: false,
	happens: (staged) => breaks(staged, (best) => isRetuned(staged.trial.night.session(), best)),
};

const secondBreak: Stage = {
	isBetweenSongs: false,
	before: (staged) => {
		const { night, clock } = staged.trial;
		for (const { player, instrument } of hands(staged)) {
			const [best] = backups(staged.trial, player);
			if (best === undefined) continue;
			night.submit({ do: 'report-break', instrument }, LED_BY);
			clock.leap(TAKEN_MS);
			const { tuning, capo } = best;
			night.submit({ do: 'stand-in', instrument: best.instrument, tuning, capo }, LED_BY);
			return true;
		}
		return false;
	},
	happens: (staged) => breaks(staged, () => true),
};

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
