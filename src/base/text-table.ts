// Columns of a plain printed table, as wide as what stands in them.

import { cleanText } from './clean-text.ts';
import { displayWidth, fitWidth } from './display-width.ts';

/** Lines of a table under its names, two spaces between columns. */
export function textTable(
	names: readonly string[],
	rows: readonly (readonly string[])[],
): string[] {
	const clean = [names, ...rows.map((row) => row.map(cleanText))];
	const widths = names.map((_, column) =>
		Math.max(...clean.map((row) => displayWidth(row[column] ?? ''))),
	);
	return clean.map((row) =>
		row
			.map((cell, column) => fitWidth(cell, widths[column] ?? 0))
			.join('  ')
			.trimEnd(),
	);
}
