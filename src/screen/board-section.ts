// What each board run from offstage is set to now, and what the next point of the song asks of it.

import { cuePoints } from '../../machines/song.ts';
import type { BoardState, Pedal } from '../showfile/show.ts';
import { playerLabel, songFrom, songOf } from './named-in-show.ts';
import { pointNext, pointNow } from './now-section.ts';
import { type Area, cutRow, fillRow, placeAt, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';

/** Two lines for each board where there is room, else one, side by side where even that is too much. */
export function boardSection(state: ScreenState, { columns, rows }: Area): Row[] {
	const boards = Object.entries(state.session.show.boards);
	if (boards.length === 0 || rows < 1) return [];
	if (rows >= boards.length * 2) {
		return boards.flatMap(([player, pedals]) => twoLines(state, { player, pedals }, columns));
	}
	const across = Math.ceil(boards.length / rows);
	const width = Math.floor(columns / across);
	const lines = boards.map(([player, pedals]) => oneLine(state, { player, pedals }));
	return Array.from({ length: Math.ceil(lines.length / across) }, (_, row) =>
		cutRow(
			lines
				.slice(row * across, row * across + across)
				.flatMap((one) => fillRow(cutRow(one, width - 1), width)),
			columns,
		),
	);
}

type Board = { readonly player: string; readonly pedals: readonly Pedal[] };

function twoLines(state: ScreenState, board: Board, columns: number): Row[] {
	const label = span(playerLabel(state.session.show, board.player), 'title');
	const next = nextBoard(state, board.player);
	const at = columns < 60 ? 18 : 22;
	return [
		placeAt(columns, [
			[0, [label]],
			[10, [span('now ', 'dim'), span(pointNow(state)?.at ?? '')]],
			[at, [span(nowText(state, board))]],
		]),
		placeAt(columns, [
			[0, [span('BOARD', 'title')]],
			[10, [span('at  ', 'dim'), span(next.at)]],
			[at, [span(next.board === null ? 'stays' : pedalWords(board.pedals, next.board))]],
		]),
	];
}

function oneLine(state: ScreenState, board: Board): Row {
	const next = nextBoard(state, board.player);
	return [
		span(`${playerLabel(state.session.show, board.player)} BOARD `, 'title'),
		span(`${nowText(state, board)}  `),
		span(`at ${next.at}: `, 'dim'),
		span(next.board === null ? 'stays' : pedalWords(board.pedals, next.board)),
	];
}

function nowText(state: ScreenState, { player, pedals }: Board): string {
	const board = state.session.boards[player];
	if (board === undefined) return '';
	const words = pedalWords(pedals, board.context.pedals);
	return board.value === 'corrected' ? `${words} (as corrected)` : words;
}

/** The board that the next point asks for; null where it says nothing of this one. */
function nextBoard(
	state: ScreenState,
	player: string,
): { readonly at: string; readonly board: BoardState | null } {
	const cue = pointNext(state);
	if (cue !== null) return { at: cue.at, board: cue.boards[player] ?? null };
	const item = songFrom(state.session, state.session.next);
	const song = item === null ? null : songOf(state.session.show, item.song);
	if (song === null) return { at: 'the end', board: null };
	return { at: song.title, board: cuePoints(song)[0]?.boards[player] ?? null };
}

function pedalWords(pedals: readonly Pedal[], board: BoardState): string {
	const on = pedals.filter(({ id }) => board[id]?.on === true);
	if (on.length === 0) return 'all off';
	const names = on.map(({ id, name }) => {
		const settings = Object.entries(board[id]?.settings ?? {}).map(
			([key, value]) => `${key} ${value}`,
		);
		return settings.length === 0
			? name.toUpperCase()
			: `${name.toUpperCase()} (${settings.join(', ')})`;
	});
	return `${names.join(', ')} on${on.length < pedals.length ? ', rest off' : ''}`;
}
