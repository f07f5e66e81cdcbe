// A question in words: what is asked, what was typed so far, what to know before answering. It lies
// over the lower part of a view, so that the hand-over and the song stay in sight.

import { displayWidth, fitWidth, graphemes } from '../base/display-width.ts';
import type { PromptView } from '../keys/prompt-view.ts';
import type { TextLine } from '../keys/text-line.ts';
import { moreLines } from '../words/views.ts';
import { promptLines } from './prompt-lines.ts';
import { type Area, cutRow, fillRows, type Row, span } from './row.ts';

/** A question is known by its first words. */
const LEAST_TITLE_COLUMNS = 12;
const INDENT = '  ';

/** The question and what was typed so far: of a long text the part where one types. */
export function titleRow(
	{ title, field }: Pick<PromptView, 'title' | 'field'>,
	columns: number,
): Row {
	if (field === null) return [span(title, 'bright')];
	const typed = typedThatFits(field, Math.max(1, columns - LEAST_TITLE_COLUMNS - 2));
	const asked = cutRow([span(title, 'bright')], columns - displayWidth(typed) - 2);
	return [...asked, span('  '), span(typed, 'bright')];
}

/** A mark where the next letter goes, at least half of the room before it. */
function typedThatFits({ before, after }: TextLine, columns: number): string {
	if (after === '') return tailThatFits(`${before}_`, columns);
	const tail = tailThatFits(
		`${before}|`,
		Math.max(Math.ceil(columns / 2), columns - displayWidth(after)),
	);
	return fitWidth(`${tail}${after}`, columns);
}

function tailThatFits(text: string, columns: number): string {
	const letters = graphemes(text);
	let from = letters.length;
	for (let used = 0; from > 0; from -= 1) {
		used += displayWidth(letters[from - 1] ?? '');
		if (used > columns) break;
	}
	return letters.slice(from).join('');
}

/** The question and as many of its lines as there are rows; what does not fit is counted. */
function promptRows(prompt: PromptView, { columns, rows }: Area): Row[] {
	if (rows < 1) return [];
	const title = titleRow(prompt, columns);
	const room = rows - 1;
	const lines = linesUnder(prompt, { columns, rows: room });
	const isCut = lines.length > room;
	const shown = lines.slice(0, isCut ? Math.max(0, room - 1) : room);
	const more = lines.length - shown.length;
	return [
		title,
		...shown.map((line): Row => [span(`${INDENT}${line}`)]),
		...(isCut && room > 0 ? [[span(moreLines(more), 'dim')]] : []),
	].map((row) => cutRow(row, columns));
}

function linesUnder(prompt: PromptView, { columns, rows }: Area): readonly string[] {
	return promptLines(prompt, { columns: columns - INDENT.length, rows });
}

/** The rows that a question takes where there are so many. */
export function promptHeight(prompt: PromptView, { columns, rows }: Area): number {
	const lines = linesUnder(prompt, { columns, rows: Math.max(0, rows - 2) });
	return Math.min(lines.length + 2, Math.max(1, rows));
}

/** The rows with the question laid over their end, a blank row above it where there is one to spare. */
export function withPrompt(rows: readonly Row[], prompt: PromptView, area: Area): Row[] {
	const wanted = promptHeight(prompt, area);
	const hasBlank = wanted > 2;
	const drawn = promptRows(prompt, { columns: area.columns, rows: hasBlank ? wanted - 1 : wanted });
	const over = hasBlank ? [[], ...drawn] : drawn;
	return [...rows.slice(0, Math.max(0, rows.length - over.length)), ...over];
}

/** Fewer rows than this are no place for a question with more to say. */
const LEAST_ROWS = 3;
/** The height of tall letters. */
const TALL_ROWS = 3;

/** The places of the stage view below the rack. */
export type Places = {
	/** What is to be done: its rows, and how it is drawn in fewer. */
	readonly workRows: number;
	readonly workIn: (rows: number) => readonly Row[];
	/** What is on, its next cue, the boards. */
	readonly song: readonly Row[];
	/** What no question needs, and what it never covers but with a text. */
	readonly curfew: readonly Row[];
	readonly warnings: readonly Row[];
	readonly last: readonly Row[];
};

/**
 * The places with the question among them: above it what is to be done first, below it the song with its next cue, as
 * much as there is room for, since the song goes on while it is answered and how long it has left decides many an
 * answer. Where they would not all fit, the curfew gives its rows. A field with text begins at the top instead and
 * takes what it needs, so that it stands still while lines below it come and go.
 */
export function withPromptAmong(
	{ workRows, workIn, song, curfew, warnings, last }: Places,
	prompt: PromptView,
	columns: number,
): Row[] {
	const below = [...song, ...warnings, ...curfew, ...last];
	const all = workRows + below.length;
	const needed = prompt.lines.length + 1;
	const room = workRows + song.length;
	if (room < Math.min(needed, LEAST_ROWS)) {
		return withPrompt([...fillRows(workIn(workRows), workRows), ...below], prompt, {
			columns,
			rows: all,
		});
	}
	if (prompt.field !== null) {
		const asked = promptRows(prompt, { columns, rows: Math.min(needed, all) });
		const over = all > asked.length ? [...asked, []] : asked;
		const left = Math.max(0, workRows - over.length);
		const rest = [...fillRows(workIn(left), left), ...below];
		return [...over, ...rest.slice(rest.length - (all - over.length))];
	}
	const isTight = needed + song.length > room;
	const rows = room + (isTight ? curfew.length : 0);
	const asked = promptRows(prompt, { columns, rows: Math.min(needed, rows) });
	const under = song.slice(0, rows - asked.length);
	const spare = rows - asked.length - under.length;
	// The first thing to do comes before blank rows.
	const blank: readonly Row[] = spare > 2 ? [[]] : [];
	const above = spare - 2 * blank.length;
	const foot = [...warnings, ...(isTight ? [] : curfew), ...last];
	// A tall first piece stays so where there is room for all of it.
	const work = workIn(above < TALL_ROWS ? above : workRows);
	return [...fillRows(work, above), ...blank, ...asked, ...blank, ...under, ...foot];
}
