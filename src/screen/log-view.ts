// What happened tonight, newest first: that is what is looked for.

import { placeAt, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { showClock } from './show-clock-words.ts';

/** Names of the columns. */
export function logHeading(columns: number): Row {
	return placeAt(columns, [
		[2, [span('LOG', 'title')]],
		[12, [span('newest first', 'dim')]],
	]);
}

/** One row for each of the newest lines of the log, `most` of them: a night has hundreds that nobody sees. */
export function logRows(state: ScreenState, columns: number, most: number): Row[] {
	return Array.from(Iterator.from(state.log).take(most), (line) =>
		placeAt(columns, [
			[2, [span(showClock(state, line.atMs).padStart(8), 'dim')]],
			[12, line.isTakenBack ? [span('taken back: '), span(line.words, 'dim')] : [span(line.words)]],
		]),
	);
}
