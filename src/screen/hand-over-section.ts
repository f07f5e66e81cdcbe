// The coming hand-overs: the first ones in tall letters, the others a line each.

import { handOverBlock } from './hand-over-block.ts';
import { handOverLines } from './hand-over-lines.ts';
import type { Area, Row } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import type { Coming } from './what-comes.ts';

export type HandOverArea = Area & {
	/** How many of the first ones are in tall letters. */
	readonly tallBlocks: number;
	/** 2 draws them six rows high. */
	readonly scale: 1 | 2;
	readonly isAscii: boolean;
};

/** Exactly `rows` rows or fewer; never a player left out while there is a row for lines. */
export function handOverSection(
	state: ScreenState,
	coming: readonly Coming[],
	area: HandOverArea,
): Row[] {
	const { tallBlocks, columns, rows } = area;
	const first = coming[0];
	const blocks = coming.slice(0, tallBlocks).flatMap((one) =>
		handOverBlock(state, one, {
			...area,
			isLater: first !== undefined && one.forWhat !== first.forWhat,
		}),
	);
	const left = rows - blocks.length;
	const soonest = first?.forWhat ?? '';
	const lines = handOverLines(state, coming.slice(tallBlocks), { columns, rows: left, soonest });
	return [...blocks, ...lines];
}
