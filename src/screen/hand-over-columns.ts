// Where the parts of a hand-over stand, for each width: the same columns for every player and every
// song, so that the eye knows where to look.

export type HandOverColumns = {
	readonly label: number;
	readonly when: number;
	/** Slot and name; over tall letters for which song, too. */
	readonly slot: number;
	/** Ready or not, in words, over tall letters. */
	readonly status: number;
	/** Where all of it stands on one line: what it is in, its capo, ready or not. */
	readonly line: { readonly tuning: number; readonly capo: number; readonly status: number };
	/** The beginning of the player's name in tall letters; null where there is no room. */
	readonly tallPlayer: number | null;
	readonly tallSlot: number;
	readonly tallTuning: number;
	/** Ready or not, as a tall mark. */
	readonly mark: number;
	/** Name, capo, pack and what to check, beside the tall letters. */
	readonly details: number;
};

/** From this width on slot, tuning and capo are all in tall letters. */
export const ALL_TALL_COLUMNS = 100;
/** From this width on the player is too. */
const TALL_PLAYER_COLUMNS = 120;
/** The cells for three letters of a name. */
export const TALL_NAME_COLUMNS = 17;

/** The columns for a width; `scale` is that of the tall letters, of which only the name's are always small. */
export function handOverColumns(columns: number, scale: 1 | 2): HandOverColumns {
	const { tallPlayer, tallSlot } =
		columns >= TALL_PLAYER_COLUMNS
			? { tallPlayer: 1, tallSlot: TALL_NAME_COLUMNS + 3 }
			: { tallPlayer: null, tallSlot: 1 };
	const tallTuning = tallSlot + 8 * scale;
	const words = { label: 0, when: 10, slot: 21 };
	const same = {
		...words,
		tallPlayer,
		tallSlot,
		tallTuning,
		line: { tuning: 34, capo: 42, status: 50 },
	};
	if (columns >= ALL_TALL_COLUMNS) {
		// Room for six letters beside `CAPO 3`.
		const mark = tallTuning + 65 * scale + 1;
		const status = columns >= TALL_PLAYER_COLUMNS ? 60 : 53;
		return {
			...same,
			line: { tuning: 36, capo: status - 9, status },
			status,
			mark,
			details: mark + 6 * scale + 2,
		};
	}
	if (columns >= 72)
		return { ...same, status: columns - 33, mark: columns - 33, details: columns - 26 };
	const details = Math.max(columns - 18, 36);
	return { ...same, status: Math.max(28, columns - 26), mark: details - 7, details };
}
