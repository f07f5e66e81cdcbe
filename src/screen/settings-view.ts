// What the user prefers, a line each; enter changes the picked one.

import { settingRows } from '../keys/settings.ts';
import { placeAt, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';

/** Names of the columns. */
export function settingsHeading(columns: number): Row {
	return placeAt(columns, [
		[2, [span('SETTINGS', 'title')]],
		[40, [span('up and down, enter changes it', 'dim')]],
	]);
}

/** One row for each setting. */
export function settingsRows(state: ScreenState, columns: number): Row[] {
	return settingRows(state.preferences).map(({ name, value, note }) =>
		placeAt(columns, [
			[2, [span(name)]],
			[32, [span(value, 'bright')]],
			[40, [span(note, 'dim')]],
		]),
	);
}
