// The view for two metres and beyond: what hands get at the next moment and how far that is, in letters as
// large as the terminal allows, and nothing else.

import type { KeyWords } from '../keys/prompt-view.ts';
import { TALL } from '../words/stage.ts';
import { handOverCards } from './cards.ts';
import { farLayout } from './far-layout.ts';
import { drawnLines, linesRows, setPieces, tallPiece } from './far-lines.ts';
import { footerRows, marksRow, messageRows } from './footer.ts';
import { handOverLines } from './hand-over-lines.ts';
import { promptHeight, withPrompt } from './prompt-rows.ts';
import { type Area, cutRow, fillRow, fillRows, type Row, rowWidth, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { storageRow } from './storage.ts';

/** On lower screens where the night is kept is said by the mark at the bottom alone. */
const LEAST_ROWS_FOR_STORAGE = 6;

export type FarOptions = { readonly isAscii: boolean; readonly keys: readonly KeyWords[] };

/** All of the screen, from where the night is kept down to the keys. */
export function farScreen(state: ScreenState, area: Area, { isAscii, keys }: FarOptions): Row[] {
	// Its place stays empty while there is nothing to say, so that no letter changes its size when there is.
	const storage = area.rows < LEAST_ROWS_FOR_STORAGE ? [] : [storageRow(state, area.columns) ?? []];
	const under = footRows(state, area, keys);
	const rest = area.rows - storage.length - under.length;
	const places: Area = { columns: area.columns, rows: Math.max(0, rest) };
	const { prompt } = state;
	const asked = prompt === null ? 0 : promptHeight(prompt, places);
	const cards = farRows(state, { ...places, rows: places.rows - asked }, isAscii);
	const rows = fillRows(cards, places.rows);
	return [...storage, ...(prompt === null ? rows : withPrompt(rows, prompt, places)), ...under];
}

/** The answer to the last key in place of the keys; under a question both. */
function footRows(state: ScreenState, area: Area, keys: readonly KeyWords[]): Row[] {
	if (area.rows < 2) return [];
	const isSaid = state.message !== null || state.isLocked;
	const said = isSaid ? messageRows(state, area).slice(0, 1) : [];
	if (isSaid && (state.prompt === null || area.rows < LEAST_ROWS_FOR_STORAGE)) return said;
	const marks = marksRow(state, area);
	const columns = Math.max(1, area.columns - rowWidth(marks));
	const [shown = []] = footerRows(keys, { columns, rows: 1 });
	return [...said, cutRow([...fillRow(shown, columns), ...marks], area.columns)];
}

/** The rows of the cards, without what stands below them. */
function farRows(state: ScreenState, area: Area, isAscii: boolean): Row[] {
	if (area.rows < 1) return [];
	const cards = handOverCards(state);
	const { now } = cards;
	if (now.length === 0) return nothingRows(state, area, isAscii);
	// As many of them as can be in tall letters, the others a line each.
	for (let tall = now.length; tall > 0; tall -= 1) {
		const lines = now.length - tall;
		const rows = area.rows - (lines === 0 ? 0 : lines + 1);
		const found = farLayout(state, now.slice(0, tall), { ...area, rows });
		if (found === null) continue;
		const drawn = found.draw(isAscii);
		if (lines === 0) return drawn;
		const others = { now: now.slice(tall), rest: [] };
		const said = handOverLines(state, others, { ...area, rows: lines });
		return [...fillRows(drawn, rows), [], ...said];
	}
	return handOverLines(state, cards, area);
}

/** That nobody changes, or that the show is over. */
function nothingRows({ session }: ScreenState, { columns, rows }: Area, isAscii: boolean): Row[] {
	const { value } = session.phase;
	const words = value === 'over' || value === 'packed' ? TALL.over : TALL.nobodyChanges;
	const pieces = words.map((word) => tallPiece([word], 'plain')).filter((one) => one !== null);
	for (let scale = Math.floor(rows / 3); scale > 0; scale -= 1) {
		const lines = setPieces(pieces, columns, scale);
		if (lines === null || linesRows(lines.length, scale) > rows) continue;
		return drawnLines(lines, { scale, isAscii });
	}
	return [[span(words.join(' ').toUpperCase())]];
}
