// The whole screen as rows: which view, what lies over it, and that it never exceeds the terminal.

import { asciiText } from './ascii-text.ts';
import { footerRows, messageRow } from './footer.ts';
import { listView, sidePanes, withPanes } from './list-view.ts';
import { liveScreen } from './live.ts';
import { withPrompt } from './prompt-rows.ts';
import { type Area, cutRow, fillRows, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';

/** How the terminal can be written to. */
export type DrawOptions = { readonly isAscii: boolean };

/** From this size on rack, set and log stand beside the live view. */
const WITH_PANES: Area = { columns: 180, rows: 45 };
const PANE_COLUMNS = 94;

/** Exactly `rows` rows, each at most `columns` cells wide, for any size from one cell up. */
export function drawScreen(state: ScreenState, size: Area, { isAscii }: DrawOptions): Row[] {
	const area = { columns: Math.max(1, size.columns), rows: Math.max(1, size.rows) };
	const drawn = state.isDark ? darkRows(area) : litRows(state, area, isAscii);
	return fillRows(drawn, area.rows).map((row) => {
		const cut = cutRow(row, area.columns);
		return isAscii ? cut.map((one) => ({ ...one, text: asciiText(one.text) })) : cut;
	});
}

/** One dim letter, the key that brings the light back: nothing else may shine in a blackout. */
function darkRows({ rows }: Area): Row[] {
	return [...fillRows([], rows - 1), [span('z', 'dim')]];
}

function litRows(state: ScreenState, area: Area, isAscii: boolean): Row[] {
	const hasPanes =
		state.view === 'live' && area.columns >= WITH_PANES.columns && area.rows >= WITH_PANES.rows;
	const columns = hasPanes ? area.columns - PANE_COLUMNS - 2 : area.columns;
	const live = liveScreen(state, { columns, rows: area.rows }, isAscii);
	const { messageRows, footerRows: keyRows } = live;
	const bodyRows = area.rows - messageRows - keyRows;
	const body = state.view === 'live' ? live : listView(state, { ...area, rows: bodyRows });
	const asked =
		state.prompt === null
			? body.rows
			: withPrompt(body.rows, state.prompt, { columns, rows: bodyRows - body.keptRows });
	const whole = hasPanes
		? withPanes(asked, sidePanes(state, { columns: PANE_COLUMNS, rows: bodyRows }), columns)
		: asked;
	const keys = state.prompt?.choices ?? state.footer;
	return [
		...whole,
		...(messageRows > 0 ? [messageRow(state, area)] : []),
		...(keyRows > 0
			? fillRows(footerRows(keys, { columns: area.columns, rows: keyRows }), keyRows)
			: []),
	];
}
