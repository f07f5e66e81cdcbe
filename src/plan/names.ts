// The words for a player or a song in a sentence.

import type { Show } from '../showfile/show.ts';

/**
 * The player's name.
 *
 * @example
 * playerName(show, 'ash') // => 'Ash'
 */
export function playerName(show: Show, player: string): string {
	return show.players.find(({ id }) => id === player)?.name ?? player;
}

/**
 * The song's title.
 *
 * @example
 * songTitle(show, 'lantern') // => 'Lantern'
 */
export function songTitle(show: Show, song: string): string {
	return show.songs.find(({ id }) => id === song)?.title ?? song;
}
