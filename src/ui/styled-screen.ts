// The whole screen as the terminal is sent it. Apart from the renderer, since the first picture is drawn
// before that is there: loading it takes longer than all else of a start, and after a crash in the middle
// of a song somebody is waiting to see where it is.

import { drawScreen } from '../screen/draw-screen.ts';
import type { Area } from '../screen/row.ts';
import type { ScreenState } from '../screen/screen-state.ts';
import { type ScreenOptions, styledRow, stylingOf } from './styled-row.ts';

/** Every row of the screen, as long as the terminal is wide. */
export function styledScreen(
	state: ScreenState,
	size: Area,
	options: ScreenOptions,
): readonly string[] {
	const styling = stylingOf(state.preferences.colours, options.colorDepth);
	return drawScreen(state, size, options).map((row) => styledRow(row, styling, size.columns));
}
