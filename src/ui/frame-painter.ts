// What the terminal shows, and the one place that writes it: a frame goes out in one piece, only what
// differs from the one before. Each write costs as much as drawing a row, and on a slow link each byte
// counts.

import { rowUpdate } from './row-update.ts';

/** What of standard output is used. */
export type PaintedStream = {
	readonly columns: number;
	readonly rows: number;
	readonly write: (text: string) => unknown;
};

export type FramePainter = {
	/** Shows this frame, a line for each row as `styledRow` gives it; what the terminal has no row for is left out. */
	readonly paint: (frame: string) => void;
	/** Shows the last frame on a screen of which nothing is known. */
	readonly paintAgain: () => void;
};

// A frame is shown when it is whole, by terminals that can (synchronised output, DECSET 2026).
const BEGIN = '\u001B[?2026h';
const END = '\u001B[?2026l';

// To the first cell, and all erased from there on (ECMA-48, 8.3.21 CUP and 8.3.39 ED).
const EMPTY_SCREEN = '\u001B[H\u001B[J';

/** A painter that takes nothing for granted about what the terminal shows. */
export function createFramePainter(stream: PaintedStream): FramePainter {
	let shown: readonly string[] = [];
	let size = { columns: 0, rows: 0 };

	function paintWhole(): void {
		const { columns, rows } = stream;
		size = { columns, rows };
		stream.write(BEGIN + EMPTY_SCREEN + shown.slice(0, rows).join('\r\n') + END);
	}

	return {
		paint: (frame) => {
			const before = shown;
			shown = frame.split('\n');
			const { columns, rows } = stream;
			if (before.length !== shown.length || size.columns !== columns || size.rows !== rows) {
				paintWhole();
				return;
			}
			const updates = shown
				.slice(0, rows)
				.map((row, index) => rowUpdate(before[index] ?? '', row, index + 1))
				.join('');
			if (updates !== '') stream.write(BEGIN + updates + END);
		},
		paintAgain: paintWhole,
	};
}
