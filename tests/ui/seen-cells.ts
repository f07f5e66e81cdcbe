// What the eye sees in a screen emulator, cell by cell.

import type xterm from '@xterm/headless';

/** One cell as it is seen. */
export type SeenCell = {
	/** Empty for a blank, and for the second half of a wide letter. */
	readonly text: string;
	/** `#rrggbb`; null for the terminal's own colour. */
	readonly color: string | null;
	readonly isBold: boolean;
};

/** The cells of every row on the screen. */
export function seenCells(terminal: xterm.Terminal): SeenCell[][] {
	const buffer = terminal.buffer.active;
	return Array.from({ length: terminal.rows }, (_, row) => {
		const line = buffer.getLine(buffer.viewportY + row)!;
		return Array.from({ length: terminal.cols }, (_unused, column) => {
			const cell = line.getCell(column)!;
			return {
				text: cell.getChars().trim(),
				color: cell.isFgRGB() ? `#${cell.getFgColor().toString(16).padStart(6, '0')}` : null,
				isBold: cell.isBold() !== 0,
			};
		});
	});
}
