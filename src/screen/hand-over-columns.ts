// Where the parts of a hand-over stand, for each width: the same columns for every player and every
// song, so that the eye knows where to look.

export type HandOverColumns = {
	readonly label: number;
	readonly when: number;
	readonly slot: number;
	/** What it is in, or where that is in tall letters, for which song. */
	readonly what: number;
	/** Ready or not, in words. */
	readonly status: number;
	/** The tall letters of the tuning. */
	readonly tuning: number;
	/** Ready or not, as a tall mark. */
	readonly mark: number;
	/** Name, capo, pack and what to check, beside the tall letters. */
	readonly details: number;
};

/** From this width on slot, tuning and capo are all in tall letters. */
export const ALL_TALL_COLUMNS = 100;

/** The columns for a width; `scale` is that of the tall letters. */
export function handOverColumns(columns: number, scale: 1 | 2): HandOverColumns {
	const same = { label: 0, when: 10, slot: 21, what: 28, tuning: 1 + 7 * scale };
	if (columns >= ALL_TALL_COLUMNS) {
		const mark = Math.max(74, scale === 2 ? columns - 50 : Math.floor(columns * 0.65));
		return { ...same, status: 53, mark, details: mark + 6 * scale + 2 };
	}
	if (columns >= 72)
		return { ...same, status: columns - 33, mark: columns - 33, details: columns - 26 };
	const details = Math.max(columns - 18, 36);
	return { ...same, status: Math.max(28, columns - 26), mark: details - 7, details };
}
