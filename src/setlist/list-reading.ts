// What a set list is read beside, and what its reading comes to: the show's parts, what was decided, what is open.

import type { InstrumentKind } from '../tuning/kind.ts';
import type { Abbreviations } from '../tuning/tuning.ts';
import type { AsideWhy, Decided, Field, RowDoubtWhy } from './list-row.ts';
import type { CellWhy } from './read-cell.ts';
import type { DraftInstrument, DraftItem, DraftPlayer, DraftSong } from './show-draft.ts';

/** An instrument that is there before the list is read. */
export type RackInstrument = {
	readonly id: string;
	readonly name: string;
	readonly slot: string | null;
	readonly kind: InstrumentKind;
	readonly for: readonly string[] | null;
	/** Canonical. */
	readonly tuning: string;
};

/** What is known before the list is read. */
export type Rack = {
	readonly players: readonly DraftPlayer[];
	readonly instruments: readonly RackInstrument[];
	readonly songs: readonly { readonly id: string; readonly title: string }[];
	readonly abbreviations: Abbreviations;
	/** Names that are instruments', whatever they look like. */
	readonly sureNames?: readonly string[];
	/** What kinds instruments are that no rack has, by `nameKey`, where somebody said so. */
	readonly kinds?: ReadonlyMap<string, InstrumentKind>;
	/** Whether somebody is there to be asked about a name that the rack does not have; else it is an instrument's. */
	readonly isAsked?: boolean;
};

export const EMPTY_RACK: Rack = { players: [], instruments: [], songs: [], abbreviations: {} };

export type AskedWhy =
	| CellWhy
	| RowDoubtWhy
	| AsideWhy
	| 'no-such-instrument'
	| 'no-such-slot'
	| 'nearly'
	| 'which-instrument'
	| 'tuning-of-another-kind'
	| 'capo-on-this-kind'
	| 'capo-on-nothing'
	| 'bad-length'
	| 'bad-tempo'
	| 'bad-gap'
	| 'bad-ends'
	| 'nearly-a-player'
	| 'interval-place'
	| 'empty-encore'
	| 'title-too-long'
	| 'column-unclear'
	| 'no-such-song'
	| 'same-as-open';

/** What could not be read in one way only. */
export type Asked = {
	readonly row: number;
	readonly column: string;
	readonly text: string;
	readonly why: AskedWhy;
	/** What it is near to, where that helps. */
	readonly near: string | null;
	/** What of a cell may be an instrument's name, and the part of it that is known from nowhere; null for other doubts. */
	readonly word: NameSaid | null;
	/** The draft's song that it belongs to; null for none. */
	readonly song: string | null;
};

export type NameSaid = { readonly whole: string; readonly unknown: string };

/** What was decided and has to be said. */
export type Said =
	| Decided
	| {
			readonly code: 'made';
			readonly instrument: string;
			readonly row: number;
			/** What says its kind. */
			readonly by: 'answer' | 'cell' | 'name' | 'heading' | 'group' | 'tuning' | 'nothing';
			/** One of a player who only ever says tunings. */
			readonly isForTuning: boolean;
	  }
	| { readonly code: 'interval-length'; readonly row: number }
	| { readonly code: 'turned-length'; readonly row: number }
	| { readonly code: 'twice'; readonly title: string; readonly rows: readonly number[] }
	| { readonly code: 'same-title'; readonly title: string; readonly row: number }
	| { readonly code: 'usual-with-capo'; readonly row: number }
	/** Played as another song, which the list names. */
	| { readonly code: 'same-as'; readonly row: number; readonly title: string; readonly as: string };

export type ListReading = {
	readonly players: readonly DraftPlayer[];
	readonly instruments: readonly DraftInstrument[];
	readonly songs: readonly DraftSong[];
	readonly set: readonly DraftItem[];
	readonly asked: readonly Asked[];
	readonly said: readonly Said[];
	readonly understood: number;
};

/** What is found on the way through a list, in its order. */
export class Findings {
	readonly asked: Asked[] = [];
	readonly said: Said[] = [];
	/** Cells that were understood. */
	understood = 0;

	ask(
		one: { readonly row: number; readonly field: Field; readonly why: AskedWhy },
		{ near = null, word = null, song = null }: Partial<Pick<Asked, 'near' | 'word' | 'song'>> = {},
	): void {
		const { row, field, why } = one;
		this.asked.push({ row, column: field.column, text: field.text, why, near, word, song });
	}

	/** What the cell comes to; asked where it comes to nothing, null where there is none. */
	read<Value>(
		field: Field | null,
		read: (text: string) => Value | null,
		at: { readonly row: number; readonly why: AskedWhy },
	): Value | null {
		if (field === null) return null;
		const value = read(field.text);
		if (value === null) this.ask({ ...at, field });
		else this.understood += 1;
		return value;
	}
}
