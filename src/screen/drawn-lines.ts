// The screen as lines of text for a script that asks to see it: no terminal is there to be asked
// what it can show.

import { drawScreen } from './draw-screen.ts';
import { type Area, rowText } from './row.ts';
import type { ScreenState } from './screen-state.ts';

/** One line of text for each row of the screen at this size. */
export function drawnLines(state: ScreenState, size: Area): readonly string[] {
	return drawScreen(state, size, { isAscii: false }).map(rowText);
}
