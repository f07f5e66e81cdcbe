// How long a line under a question may be, and short things side by side on it. In a file of its own
// since many questions ask for it.

import { displayWidth, fitWidth } from '../base/display-width.ts';

/** Columns of the narrowest screen that is complete, less the lines' indent. */
export const LINE_COLUMNS = 76;

const GAP_COLUMNS = 3;

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
