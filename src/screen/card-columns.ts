// Where the parts of a card stand, for each width: the same columns for every player and every song, so
// that the eye knows where to look.

/** The columns of a card as wide as the screen. */
export type CardColumns = {
	readonly when: number;
	/** Slot and name, and for which song. */
	readonly name: number;
	/** Ready or not, in words. */
	readonly status: number;
	/** The beginning of the player's name in tall letters; null where there is no room. */
	readonly tallPlayer: number | null;
	readonly tallSlot: number;
	readonly tallTuning: number;
	/** Ready or not, as a tall mark. */
	readonly mark: number;
	/** Capo, pack and what to check, beside the tall letters. */
	readonly details: number;
};

/** From this width on slot, tuning and capo are all in tall letters. */
export const ALL_TALL_COLUMNS = 100;
/** From this width on the player is too. */
const TALL_PLAYER_COLUMNS = 120;
/** The cells for three letters of a name. */
export const TALL_NAME_COLUMNS = 17;
/** From the slot to what stands beside it: the widest letter and room that sets both apart. */
const TALL_SLOT_COLUMNS = 8;
/** The widest tall mark. */
export const MARK_COLUMNS = 6;

/** The columns for a width; `scale` is that of the tall letters, of which only the name's are always small. */
export function cardColumns(columns: number, scale: 1 | 2): CardColumns {
	const { tallPlayer, tallSlot } =
		columns >= TALL_PLAYER_COLUMNS
			? { tallPlayer: 1, tallSlot: TALL_NAME_COLUMNS + 3 }
			: { tallPlayer: null, tallSlot: 1 };
	const tallTuning = tallSlot + TALL_SLOT_COLUMNS * scale;
	const same = { when: 10, name: 21, tallPlayer, tallSlot, tallTuning };
	if (columns >= ALL_TALL_COLUMNS) {
		// Room for six letters beside `CAPO 3`.
		const mark = tallTuning + 65 * scale + 1;
		const status = columns >= TALL_PLAYER_COLUMNS ? 60 : 53;
		return { ...same, status, mark, details: mark + MARK_COLUMNS * scale + 2 };
	}
	if (columns >= 72)
		return { ...same, status: columns - 33, mark: columns - 33, details: columns - 26 };
	const details = Math.max(columns - 18, 36);
	return { ...same, status: Math.max(28, columns - 26), mark: details - 7, details };
}
