// What a section asks of a player.

import type { Cell } from '../../session/cells.ts';
import type { Instrument, Part, Show } from '../../showfile/show.ts';
import type { Tuning } from '../../tuning/tuning.ts';
import { instrumentById } from './instrument-by-id.ts';

export type Demand =
	/** Exactly this. */
	| {
			readonly kind: 'named';
			readonly instrument: Instrument;
			readonly tuning: Tuning;
			readonly capo: number;
			readonly leave: string | null;
			/** The wireless pack that the song says for it. */
			readonly pack: string | null;
	  }
	/** Anything like this. */
	| { readonly kind: 'needs'; readonly part: NeedsPart }
	/** Nothing says what: what they have stays in their hands. */
	| { readonly kind: 'keeps' }
	/** Hands empty. */
	| { readonly kind: 'none' };

export type NeedsPart = Extract<Part, { kind: 'needs' }>;

/**
 * What the cell asks. A part without a tuning asks for the one that the file gives the instrument.
 *
 * @example
 * demandOf(show, cellAt(session, { item: session.list[1], point: 0, player: 'ash' })).tuning.name // => 'drop D'
 * demandOf(show, cellAt(session, { item: session.list[1], point: 0, player: 'bo' })).instrument.id // => 'B1'
 */
export function demandOf(show: Show, { part }: Pick<Cell, 'part'>): Demand {
	if (part === null) return { kind: 'keeps' };
	if (part.kind === 'none') return { kind: 'none' };
	if (part.kind === 'needs') return { kind: 'needs', part };
	const instrument = instrumentById(show).get(part.instrument);
	if (instrument === undefined) return { kind: 'keeps' };
	return {
		kind: 'named',
		instrument,
		tuning: part.tuning ?? instrument.tuning,
		capo: part.capo,
		leave: part.leave ?? instrument.leave,
		pack: part.pack,
	};
}
