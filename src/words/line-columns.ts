// How long a line under a question may be, and short things side by side on it. In a file of its own
// since many questions ask for it.

import { displayWidth, fitWidth } from '../base/display-width.ts';

/** Columns of the narrowest screen that is complete, less the lines' indent. */
export const LINE_COLUMNS = 76;

const GAP_COLUMNS = 3;

/** Lines under a question that an 80 by 24 screen has room for. */
const MOST_LINES = 4;
const LONGEST_NAME = 40;
const SHORTEST_NAME = 4;

/** The same with their names cut as far as it takes that all of them are in sight; `itemsWith` makes them with names of so many columns. */
export function allSideBySide(
	itemsWith: (cut: (name: string) => string) => readonly string[],
): readonly string[] {
	for (let columns = LONGEST_NAME; ; columns -= 1) {
		const cut = (name: string) => (displayWidth(name) <= columns ? name : fitWidth(name, columns));
		const lines = sideBySide(itemsWith(cut));
		if (lines.length <= MOST_LINES || columns === SHORTEST_NAME) return lines;
	}
}

/** Short items side by side in even columns, in their order, on as few lines as that takes. */
export function sideBySide(items: readonly string[]): readonly string[] {
	const columns = Math.max(0, ...items.map(displayWidth)) + GAP_COLUMNS;
	const across = Math.max(1, Math.floor((LINE_COLUMNS + GAP_COLUMNS) / columns));
	return Array.from({ length: Math.ceil(items.length / across) }, (_, line) =>
		items
			.slice(line * across, line * across + across)
			.map((item) => fitWidth(item, columns))
			.join('')
			.trimEnd(),
	);
}
