// What a show file could have become by the time it is read again, for the tests of that: the same show
// with less, more, or another order.

import type { Show } from '../../src/showfile/show.ts';

/** Shows that have something in common with this one; the last is this one itself. */
export function otherShows(show: Show): readonly [Show, ...Show[]] {
	const [firstSong, secondSong] = show.songs;
	const [firstInstrument, ...otherInstruments] = show.instruments;
	if (!firstSong || !secondSong || !firstInstrument) throw new Error('a show of nearly nothing');
	const isGone = (song: string): boolean => song === firstSong.id || song === secondSong.id;
	const songs = show.set.filter((item) => item.kind === 'song');
	return [
		{ ...show, set: show.set.toReversed() },
		{ ...show, set: songs.slice(3) },
		{
			...show,
			songs: show.songs.filter(({ id }) => !isGone(id)),
			set: show.set.filter((item) => item.kind === 'interval' || !isGone(item.song)),
		},
		{ ...show, songs: show.songs.map((song) => ({ ...song, cues: song.cues.slice(1) })) },
		{ ...show, instruments: otherInstruments, players: show.players.slice(1), boards: {} },
		{
			...show,
			instruments: [...show.instruments, { ...firstInstrument, id: 'new', slot: null }],
			songs: [...show.songs, { ...firstSong, id: 'new', title: 'New' }],
			set: [{ kind: 'song', song: 'new', gapSeconds: 5, isEncore: false }, ...show.set],
		},
		show,
	];
}
