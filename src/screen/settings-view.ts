// What the user prefers, a line each; enter changes the picked one.

import { settingRows } from '../keys/settings.ts';
import { HEADINGS } from '../words/views.ts';
import { placeAt, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';

/** The longest name fits before it. */
const VALUE_AT = 48;
const NOTE_AT = 56;

/** Names of the columns. */
export function settingsHeading(columns: number): Row {
	return placeAt(columns, [
		[2, [span(HEADINGS.settings, 'title')]],
		[VALUE_AT, [span(HEADINGS.settingsHow, 'dim')]],
	]);
}

/** One row for each setting. */
export function settingsRows(state: ScreenState, columns: number): Row[] {
	const { preferences, session } = state;
	return settingRows({ preferences, show: session.show }).map(({ name, value, note }) =>
		placeAt(columns, [
			[2, [span(name)]],
			[VALUE_AT, [span(value, 'bright')]],
			[NOTE_AT, [span(note, 'dim')]],
		]),
	);
}
