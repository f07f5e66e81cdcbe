// How far off letters can be read where the window fills a 14-inch panel, which most laptops beside a rack
// have.

import type { Area } from './row.ts';
import { tallLetterRows } from './stage.ts';

/** Height of such a panel of 16:9: 14 × 25.4 × 9 / √(16² + 9²). */
const PANEL_MM = (14 * 25.4 * 9) / Math.hypot(16, 9);
/** Minutes of arc that a letter fills where it is read well (ISO 9241-303, from memory). */
const ARC_MINUTES = 20;
/** How much of its row a small capital fills (common practice). */
const CAPITAL = 0.63;

/** Metres from which the tall and the small letters of a screen of this size are read. */
export function readFromMetres(size: Area): { readonly tall: number; readonly small: number } {
	return {
		tall: metres(tallLetterRows(size) / size.rows),
		small: metres(CAPITAL / size.rows),
	};
}

function metres(partOfPanel: number): number {
	const radians = ((ARC_MINUTES / 60) * Math.PI) / 180;
	return (partOfPanel * PANEL_MM) / 1000 / Math.tan(radians);
}
