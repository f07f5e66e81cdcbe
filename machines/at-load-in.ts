// How a night finds everything: what each machine begins in, as plain data. Apart from the machines,
// because a plan made from the show file alone then does not load their library.

import type { Instrument, Pedal, PedalState } from '../src/showfile/show.ts';
import type { InstrumentState } from './instrument.ts';
import type { BoardState } from './rig.ts';
import type { ShowState } from './show.ts';

/** The evening before its first song. */
export function showBefore(): ShowState {
	return { value: 'before', context: {} };
}

/** A board with everything off. */
export function boardAtRest(pedals: readonly Pedal[]): BoardState {
	const off: PedalState = { on: false };
	return {
		value: 'atRest',
		context: { pedals: Object.fromEntries(pedals.map((pedal) => [pedal.id, off])), stuck: [] },
	};
}

/** An instrument on the rack in the file's tuning, no capo, not ready. */
export function instrumentAtLoadIn(instrument: Instrument): InstrumentState {
	return {
		value: 'racked',
		context: {
			tuning: instrument.tuning,
			capo: 0,
			readyAtMs: null,
			isToWipe: false,
			stringsDown: [],
			faults: [],
			inHandsSinceMs: null,
			backAtMs: null,
			stringHours: instrument.strung.hours,
		},
	};
}
