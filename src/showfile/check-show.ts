// Everything risky in a show before the doors open. What makes a file unusable is a problem and has been
// refused before; what stands here can be played, and somebody should know.

import { minutesSeconds } from '../base/duration.ts';
import { checkBackups } from './check-backups.ts';
import { checkHands } from './check-hands.ts';
import { checkStrings } from './check-strings.ts';
import type { Finding } from './finding.ts';
import { instrumentWords } from './moment-words.ts';
import { runningOrder } from './running-order.ts';
import type { BoardState, Instrument, Show, Song } from './show.ts';
import { checkShapes } from './song-shapes.ts';
import { type Moment, walkSet } from './walk-set.ts';

/** More titles than these make no sentence. */
const MOST_TITLES = 5;

const DAY_MINUTES = 1440;

/** Findings without repetition: hands in the order of the set, then boards, clock and songs. */
export function checkShow(show: Show): readonly Finding[] {
	const moments = walkSet(show);
	const findings = [
		...checkHands(show, moments),
		...checkBackups(show, moments),
		...missingPedals(show),
		...curfew(show),
		...cuesPastEnd(show),
		...checkStrings(show, moments),
		...checkShapes(show, moments),
		...withoutSlot(show, moments),
		...withoutLength(show),
		...notPlayed(show),
	];
	const seen = new Set<string>();
	return findings.filter((finding) => {
		const key = JSON.stringify(finding);
		return !seen.has(key) && seen.add(key);
	});
}

function missingPedals(show: Show): Finding[] {
	return show.songs.flatMap((song) => {
		const boards = [song.board, ...song.cues.map((cue) => cue.boards)];
		return boards.flatMap((states) =>
			Object.entries(states).flatMap(([player, state]) => missingOn(show, song, { player, state })),
		);
	});
}

function missingOn(
	show: Show,
	song: Song,
	board: { readonly player: string; readonly state: BoardState },
): Finding[] {
	const { player, state } = board;
	const pedals = show.boards[player];
	const name = show.players.find((one) => one.id === player)?.name ?? player;
	const about = { code: 'pedal-missing', severity: 'risk', song: song.id, player } as const;
	if (!pedals) {
		const text = `${song.title} switches pedals for ${name}, who has no board in this show.`;
		return [{ ...about, text }];
	}
	return Object.keys(state)
		.filter((pedal) => !pedals.some(({ id }) => id === pedal))
		.map((pedal) => ({
			...about,
			text: `${song.title} switches ${pedal}, which is not on ${name}'s board.`,
		}));
}

function curfew(show: Show): Finding[] {
	const { startMinutes, curfewMinutes } = show;
	if (startMinutes === null || curfewMinutes === null) return [];
	const lastSeconds = runningOrder(show).at(-1)?.endSeconds ?? 0;
	const overSeconds = startMinutes * 60 + lastSeconds - curfewMinutes * 60;
	if (overSeconds <= 0) return [];
	const ends = dayTimeWords(startMinutes + lastSeconds / 60);
	const text = `The set ends at about ${ends}, ${minutesSeconds(overSeconds)} after the curfew of ${dayTimeWords(curfewMinutes)}.`;
	return [{ code: 'past-curfew', severity: 'risk', text }];
}

function dayTimeWords(minutes: number): string {
	const whole = Math.floor(minutes) % DAY_MINUTES;
	return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`;
}

function cuesPastEnd(show: Show): Finding[] {
	return show.songs.flatMap((song) =>
		song.cues.flatMap(({ at, nearSeconds }): Finding[] => {
			const { lengthSeconds } = song;
			if (nearSeconds === null || lengthSeconds === null || nearSeconds < lengthSeconds) return [];
			const text = `In ${song.title}, ${at} is near ${minutesSeconds(nearSeconds)}, and the song is over at ${minutesSeconds(lengthSeconds)}.`;
			return [{ code: 'near-past-end', severity: 'note', song: song.id, text }];
		}),
	);
}

function withoutSlot(show: Show, moments: readonly Moment[]): Finding[] {
	const used = new Set<Instrument>();
	for (const { hands } of moments) {
		for (const holding of hands.values()) if (holding) used.add(holding.instrument);
	}
	return show.instruments
		.filter((one) => one.slot === null && used.has(one))
		.map((one) => ({
			code: 'no-slot',
			severity: 'note',
			instrument: one.id,
			text: `${instrumentWords(one)} is played and has no slot, so no key names it.`,
		}));
}

function withoutLength(show: Show): Finding[] {
	const songs = playedSongs(show).filter(({ lengthSeconds }) => lengthSeconds === null);
	if (songs.length === 0) return [];
	const text = `${titles(songs)} ${songs.length === 1 ? 'has' : 'have'} no length, so times after it are a guess.`;
	return [{ code: 'no-length', severity: 'note', ...onlySong(songs), text }];
}

function notPlayed(show: Show): Finding[] {
	const played = new Set(playedSongs(show));
	const songs = show.songs.filter((song) => !played.has(song));
	if (songs.length === 0) return [];
	const text = `${titles(songs)} ${songs.length === 1 ? 'is' : 'are'} not in the set.`;
	return [{ code: 'not-played', severity: 'note', ...onlySong(songs), text }];
}

function playedSongs(show: Show): readonly Song[] {
	return [...new Set(runningOrder(show).map(({ song }) => song))];
}

function onlySong(songs: readonly Song[]): { readonly song?: string } {
	const [only] = songs;
	return only && songs.length === 1 ? { song: only.id } : {};
}

function titles(songs: readonly Song[]): string {
	const named = songs.slice(0, MOST_TITLES).map(({ title }) => title);
	const more = songs.length - named.length;
	return [...named, ...(more > 0 ? [`${more} more`] : [])]
		.join(', ')
		.replace(/, ([^,]*)$/, ' and $1');
}
