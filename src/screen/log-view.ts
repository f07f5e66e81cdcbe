// What happened tonight, newest first: that is what is looked for.

import { isLookedFor } from '../keys/narrow-log.ts';
import { HEADINGS, onlyLinesWith, UNDONE } from '../words/views.ts';
import { placeAt, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { wallClock } from './show-clock-words.ts';

/** Names of the columns. */
export function logHeading(columns: number, { narrowedTo }: ScreenState): Row {
	return placeAt(columns, [
		[2, [span(HEADINGS.log, 'title')]],
		[12, [span(HEADINGS.newestFirst, 'dim')]],
		...(narrowedTo === '' ? [] : [[27, [span(onlyLinesWith(narrowedTo), 'bright')]] as const]),
	]);
}

/** One row for each of the newest lines of the log, `most` of them: a night has hundreds that nobody sees. */
export function logRows(state: ScreenState, columns: number, most: number): Row[] {
	const shown = Iterator.from(state.log).filter(({ words }) =>
		isLookedFor(words, state.narrowedTo),
	);
	return Array.from(shown.take(most), (line) =>
		placeAt(columns, [
			[2, [span(wallClock(state, line.atMs).padStart(8), 'dim')]],
			[12, line.isTakenBack ? [span(UNDONE), span(line.words, 'dim')] : [span(line.words)]],
		]),
	);
}
