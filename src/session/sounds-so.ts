// Whether what a player has in hands sounds like a part of a song, so that nothing need be handed to who is not
// named there.

import type { InstrumentState } from '../../machines/instrument.ts';
import type { Instrument, Part, Show } from '../showfile/show.ts';
import { soundsLike } from '../tuning/capo.ts';

/** An instrument as it is believed to be. */
export type Held = { readonly instrument: Instrument; readonly state: InstrumentState };

/**
 * The same pitches with the capo that is on, and the same kind or among what is played instead, whose tuning
 * is believed where the file gives it; with strings down it sounds like nothing.
 */
export function soundsSo(show: Show, { instrument, state }: Held, part: Part): boolean {
	const { tuning, capo, stringsDown } = state.context;
	if (part.kind === 'none' || stringsDown.length > 0) return false;
	if (part.kind === 'needs') {
		return instrument.kind === part.instrumentKind && soundsLike(tuning, capo, part.sounds);
	}
	const named = show.instruments.find(({ id }) => id === part.instrument);
	if (named === undefined) return true;
	const listed = (named.instead ?? []).filter((one) => one.instrument === instrument.id);
	const isBelieved = listed.some(
		(one) => one.tuning !== null && one.capo === capo && soundsLike(tuning, 0, one.tuning),
	);
	if (isBelieved) return true;
	const isAlike = listed.length > 0 || instrument.kind === named.kind;
	return isAlike && soundsLike(tuning, capo - part.capo, part.tuning ?? named.tuning);
}
