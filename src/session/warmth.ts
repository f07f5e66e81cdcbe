// What a stage at another temperature can have done to instruments since each was tuned. Always a ceiling:
// wood moves too.

import type { Drifted } from '../showfile/finding.ts';
import type { Instrument } from '../showfile/show.ts';
import { driftOrder } from '../showfile/stage-drift.ts';
import type { Session } from './session.ts';

/** The stage when an instrument was tuned, and what that is known from. */
export type TunedAt = {
	readonly celsius: number;
	readonly since: 'ready' | 'ready-expected' | 'soundcheck' | 'expected' | 'typed';
};

/**
 * When it was made ready, as typed before; where nothing had been typed, as the file expects it: at
 * soundcheck until the first song, on stage from then on. Null when nobody knows.
 */
function tunedAt({ show, zeroAtMs, readyMarks }: Session, { id }: Instrument): TunedAt | null {
	const { soundcheck = null, temperature = null } = show.stage ?? {};
	const mark = readyMarks[id];
	if (mark !== undefined && mark.celsius !== null) {
		return { celsius: mark.celsius, since: 'ready' };
	}
	if (mark !== undefined && zeroAtMs !== null && mark.atMs >= zeroAtMs && temperature !== null) {
		return { celsius: temperature, since: 'ready-expected' };
	}
	if (soundcheck !== null) return { celsius: soundcheck, since: 'soundcheck' };
	return temperature === null ? null : { celsius: temperature, since: 'expected' };
}

/** Degrees between, to the tenth that anybody reads. */
function kelvinsFrom(tuned: TunedAt | null, celsius: number): number | null {
	return tuned === null ? null : Math.round((celsius - tuned.celsius) * 10) / 10;
}

/** Which instruments on the rack to touch first now that the stage is so warm, each since it was tuned, and how far they can be out at most; none when nothing can be said. */
export function warmedRack(session: Session, celsius: number | null): readonly Drifted[] {
	if (celsius === null || !Number.isFinite(celsius)) return [];
	const onRack = session.show.instruments.filter(
		({ id }) => session.instruments[id]?.value === 'racked',
	);
	return driftOrder(
		{ ...session.show, instruments: onRack },
		{
			tuningOf: ({ id, tuning }) => session.instruments[id]?.context.tuning ?? tuning,
			kelvinsOf: (one) => kelvinsFrom(tunedAt(session, one) ?? lastTyped(session), celsius),
		},
	);
}

/** What was typed last, for want of anything better to go by. */
function lastTyped({ stageCelsius }: Session): TunedAt | null {
	return stageCelsius === null ? null : { celsius: stageCelsius, since: 'typed' };
}

/** `isExpected`: nothing was typed, and the stage is as the file says. */
export type StageDrift = {
	readonly worst: Drifted;
	readonly tuned: TunedAt;
	readonly isExpected: boolean;
};

/** How far the reading of one instrument can have gone since it was tuned, to the stage as typed last, else as expected; null when nothing can be said. */
export function driftOn(session: Session, instrument: Instrument): StageDrift | null {
	const { show, stageCelsius } = session;
	const state = session.instruments[instrument.id];
	const now = stageCelsius ?? show.stage?.temperature ?? null;
	const tuned = tunedAt(session, instrument);
	if (!state || now === null || tuned === null) return null;
	const [worst] = driftOrder(
		{ ...show, instruments: [instrument] },
		{ tuningOf: () => state.context.tuning, kelvinsOf: () => kelvinsFrom(tuned, now) },
	);
	return worst === undefined ? null : { worst, tuned, isExpected: stageCelsius === null };
}
