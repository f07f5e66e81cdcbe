// One row of a set list, whoever read it: a table, a pasted list, or a list that this program wrote. What its
// cells mean is not asked yet; each still knows where it stood.
import type { ListedDay } from './listed-day.ts';

/** A cell with what its column is called. */
export type Field = {
	readonly text: string;
	readonly column: string;
	/** The end of the text where it comes from a column of tunings, and so can only be one. */
	readonly tuning?: string;
};

export type ListRow =
	| SongRow
	| {
			readonly kind: 'interval';
			readonly row: number;
			/** Null where nothing is said. */
			readonly length: Field | null;
			/** Only a heading such as Set 2 speaks of it. */
			readonly isImplied?: true;
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

export type AsideWhy =
	| 'total'
	/** Above a list, below it or over a part of it. */
	| 'heading'
	/** The headings once more, a page number, an hour of the day, what an abbreviation means. */
	| 'no-song'
	| 'no-title'
	/** One cell, and not where the titles are. */
	| 'alone';

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
	/** As the list counts it. */
	readonly number?: number | null;
	/** Another song of the list, as this one is played. */
	readonly sameAs?: Field | null;
};

export type RowDoubtWhy =
	| 'length-or-title'
	| 'interval-or-song'
	| 'which-player'
	| 'shorthand-in-title'
	| 'heading-or-song';

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
	/** What a heading says that is merged over several columns. */
	readonly group?: string;
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
	/** What it says of the day beside its songs. */
	readonly day?: ListedDay;
	/** The act's own words for tunings, where the list itself says what they are. */
	readonly abbreviations?: Readonly<Record<string, string>>;
};

/** A decision about the whole list, to be said. */
export type Decided =
	| { readonly code: 'above' | 'below' | 'among'; readonly texts: readonly string[] }
	/** A heading over several columns, and whose those are. */
	| { readonly code: 'group'; readonly text: string; readonly players: readonly string[] }
	/** Columns of times that are no lengths. */
	| { readonly code: 'clock-column'; readonly columns: readonly string[] }
	| { readonly code: 'dotted-lengths'; readonly column: string }
	/** Lines with several songs, and the sign between them. */
	| { readonly code: 'in-one-line'; readonly sign: string }
	| { readonly code: 'clock-lines'; readonly first: string }
	| { readonly code: 'side-by-side'; readonly count: number }
	| { readonly code: 'unheaded-player'; readonly column: string; readonly name: string }
	| { readonly code: 'parts'; readonly rows: readonly number[]; readonly title: string }
	/** Lines that are a table, or a table that is lines. */
	| { readonly code: 'as-table' | 'as-lines' }
	| { readonly code: 'into-notes'; readonly columns: readonly string[] }
	| { readonly code: 'column-unclear'; readonly row: number; readonly column: string }
	| { readonly code: 'no-headings'; readonly title: string }
	/** `column`: its heading, empty for none. */
	| { readonly code: 'length-column'; readonly column: string; readonly number: number }
	| { readonly code: 'capo-column'; readonly column: string; readonly player: string }
	/** Players whom nobody knew, by the lines that name them. */
	| { readonly code: 'named-in-lines'; readonly names: readonly string[] }
	| { readonly code: 'names-column'; readonly column: string }
	| { readonly code: 'one-player' }
	| { readonly code: 'blank-lines'; readonly row: number };
