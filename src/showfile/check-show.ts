// Everything risky in a show before the doors open. What makes a file unusable is a problem and has been
// refused before; what stands here can be played, and somebody should know.

import { checkBackups } from './check-backups.ts';
import { checkHands } from './check-hands.ts';
import { checkStrings } from './check-strings.ts';
import type { Finding } from './finding.ts';
import { runningOrder } from './running-order.ts';
import { checkShapes } from './shapes-in-hands.ts';
import type { Instrument, Show, Song } from './show.ts';
import { type SetPoint, walkSet } from './walk-set.ts';

/** Findings without repetition: hands in the order of the set, then boards, clock and songs. */
export function checkShow(show: Show): readonly Finding[] {
	const points = walkSet(show);
	const findings = [
		...checkHands(show, points),
		...checkBackups(show),
		...missingPedals(show),
		...curfew(show),
		...cuesPastEnd(show),
		...checkStrings(show, points),
		...checkShapes(points),
		...withoutSlot(show, points),
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
		const named = [
			...boards.flatMap((states) =>
				Object.entries(states).map(([player, state]) => [player, Object.keys(state)] as const),
			),
			...Object.entries(song.order ?? {}),
		];
		return named.flatMap(([player, asked]) => missingOn(show, song, { player, asked }));
	});
}

function missingOn(
	show: Show,
	song: Song,
	{ player, asked }: { readonly player: string; readonly asked: readonly string[] },
): Finding[] {
	const pedals = show.boards[player];
	const about = { code: 'pedal-missing', severity: 'risk', song: song.id, player } as const;
	if (!pedals) return [{ ...about, pedal: null }];
	return asked
		.filter((pedal) => !pedals.some(({ id }) => id === pedal))
		.map((pedal) => ({ ...about, pedal }));
}

function curfew(show: Show): Finding[] {
	const { startMinutes, curfewMinutes } = show;
	if (startMinutes === null || curfewMinutes === null) return [];
	const lastSeconds = runningOrder(show).at(-1)?.endSeconds ?? 0;
	const overSeconds = startMinutes * 60 + lastSeconds - curfewMinutes * 60;
	if (overSeconds <= 0) return [];
	const endMinutes = startMinutes + lastSeconds / 60;
	return [{ code: 'past-curfew', severity: 'risk', endMinutes, curfewMinutes, overSeconds }];
}

function cuesPastEnd(show: Show): Finding[] {
	return show.songs.flatMap((song) =>
		song.cues.flatMap(({ at, nearSeconds }): Finding[] => {
			const { lengthSeconds } = song;
			if (nearSeconds === null || lengthSeconds === null || nearSeconds < lengthSeconds) return [];
			const near = { cue: at, nearSeconds, lengthSeconds };
			return [{ code: 'near-past-end', severity: 'note', song: song.id, ...near }];
		}),
	);
}

function withoutSlot(show: Show, points: readonly SetPoint[]): Finding[] {
	const used = new Set<Instrument>();
	for (const { hands } of points) {
		for (const holding of hands.values()) if (holding) used.add(holding.instrument);
	}
	return show.instruments
		.filter((one) => one.slot === null && used.has(one))
		.map((one) => ({ code: 'no-slot', severity: 'note', instrument: one.id }));
}

function withoutLength(show: Show): Finding[] {
	const songs = playedSongs(show).filter(({ lengthSeconds }) => lengthSeconds === null);
	return songs.length === 0 ? [] : [{ code: 'no-length', severity: 'note', ...named(songs) }];
}

function notPlayed(show: Show): Finding[] {
	const played = new Set(playedSongs(show));
	const songs = show.songs.filter((song) => !played.has(song));
	return songs.length === 0 ? [] : [{ code: 'not-played', severity: 'note', ...named(songs) }];
}

function playedSongs(show: Show): readonly Song[] {
	return [...new Set(runningOrder(show).map(({ song }) => song))];
}

function named(songs: readonly Song[]): {
	readonly song?: string;
	readonly songs: readonly string[];
} {
	const ids = songs.map(({ id }) => id);
	const [only] = ids;
	return { ...(only !== undefined && ids.length === 1 ? { song: only } : {}), songs: ids };
}
