// What a show calls its songs, players and instruments, for a sentence. An id that the show does not
// have stands for itself, so that a damaged night can still be told.

import type { Show } from './show.ts';

function nameIn(
	things: readonly { readonly id: string; readonly name: string }[],
	id: string,
): string {
	return things.find((one) => one.id === id)?.name ?? id;
}

/** The song's title. */
export function songTitle(show: Show, id: string): string {
	return show.songs.find((one) => one.id === id)?.title ?? id;
}

/** The player's name. */
export function playerName(show: Show, id: string): string {
	return nameIn(show.players, id);
}

/** `4 Dace`, or the name alone of what has no slot. */
export function shownInstrument(show: Show, id: string): string {
	const slot = show.instruments.find((one) => one.id === id)?.slot ?? null;
	const name = instrumentName(show, id);
	return slot === null ? name : `${slot.toUpperCase()} ${name}`;
}

/** The pack's name; most have none but their id. */
export function packName(show: Show, id: string): string {
	return show.packs.find((one) => one.id === id)?.name ?? id;
}

/** The name of a pedal on this player's board. */
export function pedalName(show: Show, player: string, id: string): string {
	return nameIn(show.boards[player] ?? [], id);
}

/** The instrument's name. */
export function instrumentName(show: Show, id: string): string {
	return nameIn(show.instruments, id);
}
