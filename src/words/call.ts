// What an instrument is called in a sentence: by scripts its id, by people the slot and the name on the
// rack. Every sentence that both read is made once, so that it never says two things.

import type { Show } from '../showfile/show.ts';
import { shownInstrument } from '../showfile/shown-names.ts';

/** From the instrument's id. */
export type Call = (instrument: string) => string;

/** For scripts. */
export const byId: Call = (id) => id;

/** For people. */
export function onRack(show: Show): Call {
	return (id) => shownInstrument(show, id);
}
