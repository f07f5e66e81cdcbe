// One row of a set list, whoever read it: a table, a pasted list, or a list that this program wrote. What its
// cells mean is not asked yet; each still knows where it stood.

/** A cell with what its column is called. */
export type Field = { readonly text: string; readonly column: string };

export type ListRow =
	| SongRow
	| {
			readonly kind: 'interval';
			readonly row: number;
			/** Null where nothing is said. */
			readonly length: Field | null;
	  }
	/** From here on the songs are of the encore, or of the set again. */
	| { readonly kind: 'encore'; readonly row: number; readonly isEncore: boolean }
	/** What is no song and no mark: kept as it stands. */
	| {
			readonly kind: 'aside';
			readonly row: number;
			readonly text: string;
			readonly why: AsideWhy;
			/** The song that it is as soon as somebody says its title. */
			readonly song?: SongRow;
	  };

export type AsideWhy = 'total' | 'heading' | 'no-title';

export type SongRow = {
	readonly kind: 'song';
	readonly row: number;
	readonly title: string;
	readonly titleColumn: string;
	readonly length: Field | null;
	readonly tempo: Field | null;
	readonly gap: Field | null;
	readonly starts: Field | null;
	readonly ends: Field | null;
	/** Pieces that go into the notes, in order. */
	readonly notes: readonly string[];
	/** By player's id; empty cells are left out. */
	readonly hands: Readonly<Record<string, Field>>;
	/** Written by a program: the same title is the same song only where all else is the same. */
	readonly isExact: boolean;
	/** What the row itself could mean in two ways. */
	readonly doubt: RowDoubt | null;
	readonly id: string | null;
};

export type RowDoubtWhy =
	| 'length-or-title'
	| 'interval-or-song'
	| 'which-player'
	| 'shorthand-in-title';

/** What could be read otherwise: a piece of the row, and the title where the piece is none of it. */
export type RowDoubt = {
	readonly why: RowDoubtWhy;
	readonly piece: string;
	readonly title: string;
};

/** A player as the list names them. */
export type ListPlayer = {
	readonly id: string;
	/** As the heading has it. */
	readonly name: string;
	readonly column: string;
};

/** Whose the tunings are of a list that names nobody. */
export const NOBODY_NAMED: ListPlayer = { id: 'guitar', name: 'Guitar', column: 'list' };

/** A set list before its cells are read. */
export type SetList = {
	/** Null where the list has none. */
	readonly title: string | null;
	readonly players: readonly ListPlayer[];
	readonly rows: readonly ListRow[];
	/** Rows that say anything. */
	readonly rowCount: number;
	/** What was decided about the whole. */
	readonly decided: readonly Decided[];
};

/** A decision about the whole list, to be said. */
export type Decided =
	| { readonly code: 'above' | 'below'; readonly texts: readonly string[] }
	| { readonly code: 'into-notes'; readonly columns: readonly string[] }
	| { readonly code: 'column-unclear'; readonly row: number; readonly column: string }
	| { readonly code: 'no-headings'; readonly title: string }
	| { readonly code: 'length-column'; readonly column: string }
	| { readonly code: 'names-column'; readonly column: string }
	| { readonly code: 'one-player' }
	| { readonly code: 'blank-lines'; readonly row: number };

/** The words by which a row is an interval, and those that a song may have for a title too. */
const INTERVAL = /^\W*(?:interval|intermission|half[- ]?time|set break)\b(.*)$/iu;
const PERHAPS_INTERVAL = /^\W*(?:break|pause)\b(.*)$/iu;
const ENCORE = /^\W*(?:encores?|enc)\b\W*\d?\W*$/iu;
const ENCORE_AND_SONG = /^\W*encore\s*:\s*(\S.*)$/iu;
const TOTAL = /^\W*(?:grand )?(?:total|sum|running time|show length)\b.*$/iu;
const LENGTH_LIKE =
	/^\W*(?:(\d+(?:\.\d+)?s|\d{1,4}(?:[:'′]\d\d)?)\s*(?:m|min|mins|minutes?|')?)?\W*$/iu;

/** What a title's words make of a row; null for a song. */
export type RowWord =
	| { readonly is: 'interval'; readonly length: string | null; readonly isSure: boolean }
	| { readonly is: 'encore'; readonly song: string | null }
	| { readonly is: 'total' };

export function rowWord(title: string): RowWord | null {
	const song = ENCORE_AND_SONG.exec(title)?.[1];
	if (song !== undefined) return { is: 'encore', song };
	if (ENCORE.test(title)) return { is: 'encore', song: null };
	if (TOTAL.test(title)) return { is: 'total' };
	for (const [pattern, isSure] of [
		[INTERVAL, true],
		[PERHAPS_INTERVAL, false],
	] as const) {
		const rest = pattern.exec(title)?.[1];
		const length = rest === undefined ? null : LENGTH_LIKE.exec(rest);
		if (!length) continue;
		const minutes = length[1];
		return {
			is: 'interval',
			length: minutes === undefined ? null : /\D/.test(minutes) ? minutes : `${minutes}m`,
			isSure,
		};
	}
	return null;
}
