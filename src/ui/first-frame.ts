// The first picture of the screen, drawn before the renderer is there: loading that takes longer than
// all else of a start, and after a crash in the middle of a song somebody is waiting to see where it is.

import { drawScreen } from '../screen/draw-screen.ts';
import type { Area } from '../screen/row.ts';
import type { ScreenState } from '../screen/screen-state.ts';
import { type ScreenOptions, styledRow, stylingOf } from './styled-row.ts';

// Where the renderer's own first frame begins (ECMA-48, 8.3.21 CUP).
const HOME = '\u001B[H';

/** All rows, to be written on an empty screen; the renderer's first frame is the same, cell for cell. */
export function firstFrame(state: ScreenState, size: Area, options: ScreenOptions): string {
	const styling = stylingOf(state.preferences.looks, options.colorDepth);
	const rows = drawScreen(state, size, options).map((row) => styledRow(row, styling, size.columns));
	return rows.join('\r\n') + HOME;
}
