// The whole screen as rows: which view, what lies over it, and that it never exceeds the terminal.

import type { KeyWords } from '../keys/prompt-view.ts';
import { CANCEL } from '../words/stage.ts';
import { asciiText } from './ascii-text.ts';
import { farScreen } from './far-view.ts';
import { footerRows, messageRows } from './footer.ts';
import { paneView } from './pane-view.ts';
import { plainClusters } from './plain-clusters.ts';
import { withPrompt } from './prompt-rows.ts';
import { type Area, cutRow, fillRows, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
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
	const drawn = state.isDark ? darkRows(area) : litRows(state, area, isAscii);
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
	const stage = stageScreen(state, area, isAscii);
	const { columns } = area;
	const { footerRows: keyRows } = stage;
	// Where the view has no row for it, what is said of where the night is kept takes the lowest one.
	const hasRow = state.view === 'stage' ? stage.hasStorageRow : state.view === 'warnings';
	const storage = hasRow || area.rows < LEAST_ROWS_FOR_STORAGE ? null : storageRow(state, columns);
	const rows = stage.head.length + stage.bodyRows - (storage === null ? 0 : 1);
	const places =
		state.view === 'stage'
			? [...stage.head, ...stage.body()].slice(0, rows)
			: paneWithPrompt(state, { columns, rows }, stage);
	const view = storage === null ? places : [...places, storage];
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
	const list = paneView(state, { columns, rows }, hasHead ? stage.head : null);
	if (state.prompt === null) return list.rows;
	return withPrompt(list.rows, state.prompt, { columns, rows: rows - list.keptRows });
}

/** The keys that answer the question, the one that leaves it always among them. */
function keysNow({ prompt, footer }: ScreenState): readonly KeyWords[] {
	if (prompt === null) return footer;
	const isSaid = prompt.choices.some(({ key }) => key === 'esc');
	return isSaid ? prompt.choices : [...prompt.choices, { key: 'esc', words: CANCEL }];
}
