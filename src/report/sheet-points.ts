// What a sheet says is pressed, point by point: each board followed from what it is before the first song to come.

import { boardAfterCue } from '../../machines/rig.ts';
import { tempoTimes } from '../rig/tempo-times.ts';
import type { SetSong } from '../showfile/running-order.ts';
import type { PedalStates } from '../showfile/show.ts';
import { playerName } from '../showfile/shown-names.ts';
import { boardPresses } from '../words/board-presses.ts';
import { boardStateWords } from '../words/rig.ts';
import type { SheetPoint } from './sheet.ts';
import type { SheetSource } from './sheet-gear.ts';

/** For each song of the list its points, every board followed from what it is before the first of them. */
export function boardsAlong(
	{ session, plan }: SheetSource,
	order: readonly SetSong[],
): readonly (readonly SheetPoint[])[] {
	const { show } = session;
	const ahead = new Set(plan.sections.map(({ position }) => position));
	const tempo = tempoTimes(show);
	const now = new Map(
		Object.entries(session.boards).map(([player, { context }]) => [player, context]),
	);
	return order.map(({ song, position }) => {
		if (!ahead.has(position)) return [];
		const points = [
			{ at: null, say: null, boards: song.board },
			...song.cues.map(({ at, say, boards }) => ({ at, say, boards })),
		];
		return points.flatMap(({ at, say, boards: asked }): readonly SheetPoint[] => {
			const boards = Object.entries(asked).flatMap(([player, states]) => {
				const context = now.get(player);
				if (context === undefined) return [];
				const then: PedalStates = boardAfterCue(context, states);
				now.set(player, { ...context, pedals: then });
				const pedals = show.boards[player] ?? [];
				return [
					{
						player,
						who: playerName(show, player).toUpperCase(),
						presses: boardPresses(
							pedals,
							{ was: context.pedals, is: then, tempo: song.tempo },
							true,
						).join(' '),
						whole: boardStateWords(show, {
							player,
							states: then,
							tempo: tempo.filter((one) => one.song === song.id && one.player === player),
						}),
					},
				];
			});
			return at === null && boards.length === 0 ? [] : [{ at, say, boards }];
		});
	});
}
