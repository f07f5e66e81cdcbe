// What was last done, and that it can be taken back.

import { displayWidth } from '../base/display-width.ts';
import { keyOfAction } from '../keys/key-choices.ts';
import { moreWords, NOTHING_YET, PLACES, undoHint } from '../words/stage.ts';
import { type Area, placeAt, type Row, span } from './row.ts';
import type { LogLine, ScreenState } from './screen-state.ts';
import { wallClock } from './show-clock-words.ts';

const LABEL_COLUMNS = 10;

/**
 * One row: what the last step did, or, where that is too long, what it did first to hands and capos and how many
 * things more, be it who has what alone; and that it can be taken back.
 */
export function lastSection(state: ScreenState, { columns }: Area): Row[] {
	const lines = lastStep(state.log);
	const [first] = lines;
	// What the program wrote down by itself is nobody's step and stays.
	const isTakeable = first !== undefined && first.step === state.takeableStep;
	const hint =
		!isTakeable || columns < 50 ? '' : undoHint(keyOfAction('take-back', state.preferences.keys));
	const clock = first === undefined ? '' : `${wallClock(state, first.atMs)}  `;
	const room = columns - LABEL_COLUMNS - clock.length - hint.length - 2;
	const words =
		first === undefined ? [span(NOTHING_YET, 'dim')] : [span(clock), span(stepWords(lines, room))];
	return [
		placeAt(columns, [
			[0, [span(PLACES.last, 'title')]],
			[LABEL_COLUMNS, words],
			...(hint === '' ? [] : [[columns - hint.length, [span(hint, 'dim')]] as const]),
		]),
	];
}

function stepWords(lines: readonly LogLine[], room: number): string {
	const inOrder = lines.map(({ words }) => words);
	const whole = inOrder.join('; ');
	// Of one thing its end is cut.
	if (lines.length < 2 || displayWidth(whole) <= room) return whole;
	// What a step records of hands is to be checked; which song is on stands above.
	const inTurn = lines
		.toSorted((one, other) => Number(!!one.isOfSong) - Number(!!other.isOfSong))
		.map(({ words }) => words);
	// Where not even one is whole, who has what, of as many as possible: of one cut nothing would tell that there are more.
	const short = inTurn.map((words) => words.split(', ')[0] ?? words);
	const said = [...firstOf(inTurn), ...firstOf(short)];
	return said.find((words) => displayWidth(words) <= room) ?? said.at(-1) ?? '';
}

/** All of them, then ever fewer, with how many are left out. */
function firstOf(said: readonly string[]): readonly string[] {
	return said.map((_, index) => {
		const shown = said.slice(0, said.length - index);
		return [...shown, ...(index === 0 ? [] : [moreWords(index)])].join('; ');
	});
}

/** The lines of the newest step that stands, in the order in which they happened. */
function lastStep(log: Iterable<LogLine>): readonly LogLine[] {
	const lines: LogLine[] = [];
	for (const line of log) {
		if (line.isTakenBack) continue;
		if (lines[0] && lines[0].step !== line.step) break;
		lines.unshift(line);
	}
	return lines;
}
