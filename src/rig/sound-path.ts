// The parts that a player's sound goes through, with the board among them.

import type { RigPart } from '../showfile/rig.ts';
import type { Show } from '../showfile/show.ts';

const BOARD: RigPart = { id: 'board', name: 'board', kind: 'board' };

/**
 * From the strings to the desk, without the instrument. A board that the file gives no place stands behind the cord or
 * the pack that comes first.
 *
 * @example
 * soundPath(BOARD, 'bo').map(({ kind }) => kind) // => ['board']
 * soundPath({ ...CORDS, boards: BOARD.boards }, 'bo').map(({ id }) => id) // => ['lead', 'board', 'head']
 */
export function soundPath(
	{ rigs = {}, boards }: Pick<Show, 'rigs' | 'boards'>,
	player: string,
): readonly RigPart[] {
	const parts = rigs[player] ?? [];
	const isPlaced = parts.some(({ kind }) => kind === 'board');
	if (isPlaced || !Object.hasOwn(boards, player)) return parts;
	const first = parts.findIndex(({ kind }) => kind !== 'cord' && kind !== 'pack');
	const at = first < 0 ? parts.length : first;
	return [...parts.slice(0, at), BOARD, ...parts.slice(at)];
}
