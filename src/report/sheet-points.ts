// What a sheet says is pressed, point by point: each board followed from what it is before the first song to come.

import { boardAfterCue } from '../../machines/rig.ts';
import { orderChange } from '../rig/rig-path.ts';
import { findSong, findSongItem } from '../session/find.ts';
import type { SetSong } from '../showfile/running-order.ts';
import type { PedalStates } from '../showfile/show.ts';
import { playerName } from '../showfile/shown-names.ts';
import { boardPresses } from '../words/board-presses.ts';
import { boardStateWords, orderWords } from '../words/rig.ts';
import type { SheetPoint } from './sheet.ts';
import type { SheetSource } from './sheet-gear.ts';

/** For each song of the list its points, every board followed from what it is before the first of them. */
export function boardsAlong(
	{ session, plan }: SheetSource,
	order: readonly SetSong[],
): readonly (readonly SheetPoint[])[] {
	const { show } = session;
	const ahead = new Set(plan.sections.map(({ position }) => position));
	const now = new Map(
		Object.entries(session.boards).map(([player, { context }]) => [player, context]),
	);
	const on = findSongItem(session, session.current);
	let tempo = on === null ? null : (findSong(session, on.song)?.tempo ?? null);
	return order.map(({ song, position }, index) => {
		if (!ahead.has(position)) return [];
		const atStart = { from: tempo, to: song.tempo };
		tempo = song.tempo;
		const before = order[index - 1]?.song.id ?? null;
		const points = [
			{ at: null, say: null, boards: song.board },
			...song.cues.map(({ at, say, boards }) => ({ at, say, boards })),
		];
		return points.flatMap(({ at, say, boards: asked }): readonly SheetPoint[] => {
			const boards = Object.entries(show.boards).flatMap(([player, pedals]) => {
				const context = now.get(player);
				const states = asked[player];
				const moved = at === null ? orderChange(show, { player, from: before, to: song.id }) : null;
				if (context === undefined) return [];
				const then: PedalStates =
					states === undefined ? context.pedals : boardAfterCue(context, states);
				now.set(player, { ...context, pedals: then });
				const presses = boardPresses(
					pedals,
					{
						was: context.pedals,
						is: then,
						stuck: context.stuck,
						tempo: at === null ? atStart : { from: song.tempo, to: song.tempo },
					},
					true,
				).join(' ');
				if (states === undefined && moved === null && presses === '') return [];
				return [
					{
						player,
						who: playerName(show, player).toUpperCase(),
						presses: [...(moved === null ? [] : [orderWords(moved)]), presses]
							.filter((words) => words !== '')
							.join(', '),
						whole: boardStateWords(show, {
							player,
							states: then,
							tempo: song.tempo,
						}),
					},
				];
			});
			return at === null && boards.length === 0 ? [] : [{ at, say, boards }];
		});
	});
}
