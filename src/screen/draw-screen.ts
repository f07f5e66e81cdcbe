// The whole screen as rows: which view, what lies over it, and that it never exceeds the terminal.

import type { KeyWords } from '../keys/prompt-view.ts';
import { CANCEL } from '../words/stage.ts';
import { asciiText } from './ascii-text.ts';
import { farScreen } from './far-view.ts';
import { footerRows, messageRows } from './footer.ts';
import { paneView } from './pane-view.ts';
import { plainClusters } from './plain-clusters.ts';
import { withPrompt } from './prompt-rows.ts';
import { type Area, cutRow, fillRows, type Row, rowText, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { songSection } from './song-section.ts';
import { type StageScreen, stageScreen } from './stage.ts';
import { storageRow } from './storage.ts';

/** Below the stage view's head a list has at least so many rows, or the head is given up for a line. */
const LEAST_LIST_ROWS = 18;

/** Lower screens say it by the mark beside the message alone. */
const LEAST_ROWS_FOR_STORAGE = 6;

/** How the terminal can be written to. */
export type DrawOptions = { readonly isAscii: boolean };

/** Exactly `rows` rows, each at most `columns` cells wide, for any size from one cell up. */
export function drawScreen(state: ScreenState, size: Area, { isAscii }: DrawOptions): Row[] {
	const area = { columns: Math.max(1, size.columns), rows: Math.max(1, size.rows) };
	return drawableRows(state.isDark ? darkRows(area) : litRows(state, area, isAscii), area, isAscii);
}

/** Exactly so many rows, none wider than the area, in signs that the terminal can show. */
export function drawableRows(drawn: readonly Row[], area: Area, isAscii: boolean): Row[] {
	return fillRows(drawn, area.rows).map((row) => {
		const cut = cutRow(row, area.columns);
		const drawable = isAscii ? asciiText : plainClusters;
		return cut.map((one) => {
			const text = drawable(one.text);
			return text === one.text ? one : { ...one, text };
		});
	});
}

/** One dim letter, the key that brings the light back: nothing else may shine in a blackout. */
function darkRows({ rows }: Area): Row[] {
	return [...fillRows([], rows - 1), [span('z', 'dim')]];
}

function litRows(state: ScreenState, area: Area, isAscii: boolean): Row[] {
	if (state.view === 'far') return farScreen(state, area, { isAscii, keys: keysNow(state) });
	const { columns } = area;
	// Above all else, where there is something to be said of where the night is kept.
	const storage =
		state.view === 'warnings' || area.rows < LEAST_ROWS_FOR_STORAGE
			? null
			: storageRow(state, columns);
	const above = storage === null ? [] : [storage];
	const stage = stageScreen(state, { columns, rows: area.rows - above.length }, isAscii);
	const { footerRows: keyRows } = stage;
	const rows = stage.head.length + stage.bodyRows;
	const view = [
		...above,
		...(state.view === 'stage'
			? [...stage.head, ...stage.body()]
			: paneWithPrompt(state, { columns, rows }, stage)),
	];
	// A long answer covers the lowest row of the view until the next key.
	const message = stage.messageRows > 0 ? messageRows(state, area) : [];
	return [
		...view.slice(0, view.length + stage.messageRows - message.length),
		...message,
		...(keyRows > 0
			? fillRows(footerRows(keysNow(state), { columns, rows: keyRows }), keyRows)
			: []),
	];
}

/** A list with what stands above it: on a high screen all of the stage view's head, in its own places. */
function paneWithPrompt(state: ScreenState, { columns, rows }: Area, stage: StageScreen): Row[] {
	const hasHead = state.view !== 'help' && stage.bodyRows >= LEAST_LIST_ROWS;
	const song = songSection(state, { columns, rows: 2, boardRows: 0 });
	const list = paneView(
		state,
		{ columns, rows },
		hasHead ? [...withoutBlankEnd(stage.head), [], ...song, []] : null,
	);
	if (state.prompt === null) return list.rows;
	return withPrompt(list.rows, state.prompt, { columns, rows: rows - list.keptRows });
}

/** The rows up to the last one that says something: below them a list needs the room. */
function withoutBlankEnd(rows: readonly Row[]): readonly Row[] {
	return rows.slice(0, rows.findLastIndex((row) => rowText(row).trim() !== '') + 1);
}

/** The keys that answer the question, the one that leaves it always among them. */
function keysNow({ prompt, footer }: ScreenState): readonly KeyWords[] {
	if (prompt === null) return footer;
	const isSaid = prompt.choices.some(({ key }) => key === 'esc');
	return isSaid ? prompt.choices : [...prompt.choices, { key: 'esc', words: CANCEL }];
}
