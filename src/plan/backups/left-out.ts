// Why each instrument of the family that nothing is offered of cannot take over: whoever reads that no backup
// fits looks at the rack and sees some that seem to.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { Instrument } from '../../showfile/show.ts';
import { KINDS } from '../../tuning/kind.ts';
import { midiOf } from '../../tuning/pitch.ts';
import { whyAbsent, whyUnplayable } from '../demand/why-unplayable.ts';
import type { LeftOut } from '../plan.ts';
import type { Rack } from './stand-in-ranks.ts';
import { takeOver } from './take-over.ts';

/**
 * In the order of the file, what is of the family and not offered, each with its first reason; that there is no
 * other, where that is so.
 *
 * @example
 * leftOutOf({ ...rack, holder: (id) => (id === 'B3' ? 'bo' : null), player: 'ash', sound: soundOfA1 }) // => [{ code: 'in-hands', instrument: 'B3', player: 'bo' }]
 */
export function leftOutOf(rack: Rack): readonly LeftOut[] {
	const { show, sound } = rack;
	const { family } = KINDS[sound.kind];
	const others = show.instruments.filter(
		(one) => one.id !== sound.replaced?.id && KINDS[one.kind].family === family,
	);
	if (others.length === 0) return [{ code: 'no-other', kind: sound.kind }];
	return others.flatMap((one) => reasonOf(rack, one) ?? []);
}

function reasonOf(rack: Rack, instrument: Instrument): LeftOut | null {
	const { show, nowMs, player, sound } = rack;
	const state = rack.instruments[instrument.id];
	if (state === undefined) return null;
	const { id } = instrument;
	const absent = whyAbsent(instrument, state);
	if (absent !== null) return absent;
	if (state.context.stringsDown.length > 0) return { code: 'string-down', instrument: id };
	const holder = rack.holder(id);
	if (holder !== null && holder !== player)
		return { code: 'in-hands', instrument: id, player: holder };
	const isHeld = holder === player;
	const offered = { show, instrument, state, isHeld, nowMs };
	return takeOver(offered, sound) === null ? soundReason(rack, { instrument, state }) : null;
}

/** Why it cannot be brought to the sound. */
function soundReason(
	{ sound: { tuning } }: Rack,
	{ instrument, state }: { readonly instrument: Instrument; readonly state: InstrumentState },
): LeftOut {
	const { id, tuning: own } = instrument;
	if (own.notes.length !== tuning.notes.length) {
		return { code: 'other-strings', instrument: id, tuning: state.context.tuning.name };
	}
	const floating = whyUnplayable({ instrument, state, tuning });
	if (floating !== null) return floating;
	const up = tuning.notes.map((note, at) => midiOf(note) - midiOf(own.notes[at] ?? note));
	const isHeavy = Math.max(...up) >= -Math.min(...up);
	return { code: isHeavy ? 'too-heavy' : 'too-light', instrument: id, tuning: own.name };
}
