// What a stage at another temperature can have done to the rack, in one sentence for whoever stands there.

import type { Instrument } from '../showfile/show.ts';
import { changeWords, driftOrder, driftWords } from '../showfile/stage-drift.ts';
import type { Session } from './session.ts';

/** The temperature that instruments were last tuned at, as far as it is known: as typed last, else that of soundcheck. */
function tunedAtCelsius({ stageCelsius, show }: Session): number | null {
	return stageCelsius ?? show.stage?.soundcheck ?? show.stage?.temperature ?? null;
}

/** Which instruments on the rack to touch first now that the stage is so warm, and how far they can be out at most; null when nothing can be said. */
export function warmthWords(session: Session, celsius: number | null): string | null {
	const before = tunedAtCelsius(session);
	if (celsius === null || before === null || !Number.isFinite(celsius)) return null;
	const kelvins = Math.round((celsius - before) * 10) / 10;
	const onRack = session.show.instruments.filter(
		({ id }) => session.instruments[id]?.value === 'racked',
	);
	const drifted = driftOrder(
		{ ...session.show, instruments: onRack },
		kelvins,
		({ id, tuning }) => session.instruments[id]?.context.tuning ?? tuning,
	);
	return driftWords(drifted, kelvins);
}

/**
 * How far the reading of one instrument can have gone since it was tuned, in one sentence: since soundcheck
 * to the stage as typed, else as expected. Null when nothing can be said, and for what was made ready
 * since a temperature was typed.
 */
export function warmthOn(session: Session, instrument: Instrument): string | null {
	const { show, stageCelsius } = session;
	const state = session.instruments[instrument.id];
	const now = stageCelsius ?? show.stage?.temperature ?? null;
	const then = show.stage?.soundcheck ?? null;
	if (!state || now === null || then === null) return null;
	if (stageCelsius !== null && state.context.readyAtMs !== null) return null;
	const kelvins = Math.round((now - then) * 10) / 10;
	const only = { ...show, instruments: [instrument] };
	const [worst] = driftOrder(only, kelvins, () => state.context.tuning);
	if (worst === undefined || kelvins === 0) return null;
	const { string, cents } = worst;
	return `stage ${changeWords(kelvins)} than at soundcheck: string ${string} at most ${Math.abs(cents).toFixed(0)} c ${cents < 0 ? 'flat' : 'sharp'}`;
}
