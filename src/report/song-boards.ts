// What every board is at each point of a song that says so, with its times at the song's tempo: for the patch list.

import { orderChange } from '../rig/rig-path.ts';
import type { Show, Song } from '../showfile/show.ts';
import { boardStateWords, orderWords, RIG_PAGE } from '../words/rig.ts';

export type SongBoard = {
	readonly player: string;
	/** The cue, or that the song starts. */
	readonly at: string;
	/** The order of pedals where it is the song's own, then the whole state. */
	readonly words: string;
};

/** In the order of the song's points. */
export function songBoards(show: Show, song: Song): readonly SongBoard[] {
	const points = [
		{ at: RIG_PAGE.start, boards: song.board },
		...song.cues.map(({ at, boards }) => ({ at, boards })),
	];
	const orders = Object.keys(song.order ?? {}).flatMap((player): SongBoard[] => {
		const order = orderChange(show, { player, from: null, to: song.id });
		return order === null ? [] : [{ player, at: RIG_PAGE.order, words: orderWords(order) }];
	});
	return [
		...orders,
		...points.flatMap(({ at, boards }) =>
			Object.entries(boards).map(([player, states]) => ({
				player,
				at,
				words: boardStateWords(show, {
					player,
					states,
					tempo: song.tempo,
				}),
			})),
		),
	];
}
