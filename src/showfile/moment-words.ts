// How findings speak of a moment of the set and of an instrument.

import type { Instrument } from './show.ts';
import type { Moment } from './walk-set.ts';

/** Where a moment is, as the end of a sentence: `Harbour at bridge`. */
export function momentWords({ on, cue }: Moment): string {
	return cue ? `${on.song.title} at ${cue.at}` : on.song.title;
}

/** An instrument as it is spoken of: `A4 Anchor`. */
export function instrumentWords({ id, name }: Instrument): string {
	return name === id ? id : `${id} ${name}`;
}
