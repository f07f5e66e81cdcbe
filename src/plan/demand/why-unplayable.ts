// Why an instrument cannot be had at all, whoever asks. Broken strings are work, not a reason.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { Instrument } from '../../showfile/show.ts';
import type { Tuning } from '../../tuning/tuning.ts';
import type { Unplayable } from '../plan.ts';
import { samePitches } from './same-pitches.ts';

/** An instrument at a moment, and the open tuning that is asked of it. */
type Asked = {
	readonly instrument: Instrument;
	readonly state: InstrumentState;
	readonly tuning: Tuning;
};

/**
 * The reason, or null when it can be had: out, faulty, or a floating bridge in another
 * tuning.
 *
 * @example
 * whyUnplayable({ instrument: instruments.A3, state: states.A3, tuning: dropD }) // => { code: 'floating-bridge', instrument: 'A3', tuning: 'E standard' }
 * whyUnplayable({ instrument: instruments.A1, state: states.A1, tuning: dropD }) // => null
 */
export function whyUnplayable({ instrument, state, tuning }: Asked): Unplayable | null {
	const absent = whyAbsent(instrument, state);
	const { tuning: own } = state.context;
	if (absent !== null || instrument.bridge === 'fixed' || samePitches(own, tuning)) return absent;
	return { code: 'floating-bridge', instrument: instrument.id, tuning: own.name };
}

/**
 * The same, whatever tuning is asked for: in its case, out or faulty.
 *
 * @example
 * whyAbsent(instruments.A1, { ...states.A1, value: 'out' }) // => { code: 'out', instrument: 'A1' }
 */
export function whyAbsent(
	{ id: instrument }: Instrument,
	{ value, context }: InstrumentState,
): Unplayable | null {
	if (value === 'out') return { code: 'out', instrument };
	const [fault] = context.faults;
	return fault === undefined ? null : { code: 'faulty', instrument, fault };
}
