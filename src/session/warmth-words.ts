// What a stage at another temperature can have done to instruments since each was tuned, in one sentence
// for whoever stands at the rack. Always a ceiling: wood moves too.

import type { Instrument } from '../showfile/show.ts';
import {
	centsWords,
	changeWords,
	type Drifted,
	driftOrder,
	driftWords,
} from '../showfile/stage-drift.ts';
import type { Session } from './session.ts';

/** The stage when an instrument was tuned. */
type TunedAt = {
	readonly celsius: number;
	/** Ends "8 °C warmer …". */
	readonly words: string;
};

/**
 * When it was made ready, as typed before; where nothing had been typed, as the file expects it: at
 * soundcheck until the first song, on stage from then on. Null when nobody knows.
 */
function tunedAt({ show, zeroAtMs, readyMarks }: Session, { id }: Instrument): TunedAt | null {
	const { soundcheck = null, temperature = null } = show.stage ?? {};
	const mark = readyMarks[id];
	if (mark !== undefined && mark.celsius !== null) {
		return { celsius: mark.celsius, words: `than when made ready at ${mark.celsius} °C` };
	}
	if (mark !== undefined && zeroAtMs !== null && mark.atMs >= zeroAtMs && temperature !== null) {
		return { celsius: temperature, words: 'than expected when made ready' };
	}
	if (soundcheck !== null) return { celsius: soundcheck, words: 'than at soundcheck' };
	return temperature === null ? null : { celsius: temperature, words: 'than expected' };
}

/** Degrees between, to the tenth that anybody reads. */
function kelvinsFrom(tuned: TunedAt | null, celsius: number): number | null {
	return tuned === null ? null : Math.round((celsius - tuned.celsius) * 10) / 10;
}

/** Which instruments on the rack to touch first now that the stage is so warm, each since it was tuned, and how far they can be out at most; null when nothing can be said. */
export function warmthWords(session: Session, celsius: number | null): string | null {
	if (celsius === null || !Number.isFinite(celsius)) return null;
	const onRack = session.show.instruments.filter(
		({ id }) => session.instruments[id]?.value === 'racked',
	);
	const drifted = driftOrder(
		{ ...session.show, instruments: onRack },
		{
			tuningOf: ({ id, tuning }) => session.instruments[id]?.context.tuning ?? tuning,
			kelvinsOf: (one) => kelvinsFrom(tunedAt(session, one) ?? lastTyped(session), celsius),
		},
	);
	return driftWords(drifted);
}

/** What was typed last, for want of anything better to go by. */
function lastTyped({ stageCelsius }: Session): TunedAt | null {
	return stageCelsius === null ? null : { celsius: stageCelsius, words: 'than before' };
}

/** How far the reading of one instrument can have gone since it was tuned, to the stage as typed last, else as expected; null when nothing can be said. */
export function driftOn(
	session: Session,
	instrument: Instrument,
): { readonly worst: Drifted; readonly tuned: TunedAt } | null {
	const { show, stageCelsius } = session;
	const state = session.instruments[instrument.id];
	const now = stageCelsius ?? show.stage?.temperature ?? null;
	const tuned = tunedAt(session, instrument);
	if (!state || now === null || tuned === null) return null;
	const [worst] = driftOrder(
		{ ...show, instruments: [instrument] },
		{ tuningOf: () => state.context.tuning, kelvinsOf: () => kelvinsFrom(tuned, now) },
	);
	return worst === undefined ? null : { worst, tuned };
}

/** The same in one sentence, with since when that is. */
export function warmthOn(session: Session, instrument: Instrument): string | null {
	const drift = driftOn(session, instrument);
	if (drift === null) return null;
	const { worst, tuned } = drift;
	const isExpected = session.stageCelsius === null ? 'expected ' : '';
	return `stage ${isExpected}${changeWords(worst.kelvins)} ${tuned.words}: string ${worst.string} at most ${centsWords(worst.cents)}`;
}
