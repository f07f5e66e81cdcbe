// How one instrument could take over from another: what it would be put into, how long that takes from
// now, and why it would do.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { NightMs } from '../../journal/entry.ts';
import { readiness } from '../../session/readiness.ts';
import type { Instrument, Show } from '../../showfile/show.ts';
import type { InstrumentKind } from '../../tuning/kind.ts';
import { KINDS } from '../../tuning/kind.ts';
import { retuneKind } from '../../tuning/retune.ts';
import type { Tuning } from '../../tuning/tuning.ts';
import type { OpenWithCapo } from '../demand/same-pitches.ts';
import { hasStringsOf, samePitches, waysToSound } from '../demand/same-pitches.ts';
import type { StandIn, StandInReason } from '../plan.ts';
import { workNeeded } from '../schedule/work-needed.ts';

/** What is to be heard, and what it is usually played on. */
export type Sound = {
	readonly tuning: Tuning;
	readonly kind: InstrumentKind;
	/** What stands to be replaced; null where nothing in particular does. */
	readonly replaced: Instrument | null;
};

/** An instrument that might take over, as it is now. */
export type Offered = {
	readonly show: Show;
	readonly instrument: Instrument;
	readonly state: InstrumentState;
	/** The player has it in hands themselves. */
	readonly isHeld: boolean;
	readonly nowMs: NightMs;
};

export type TakeOver = Omit<StandIn, 'later'> & {
	/** It sounds right as it stands and is ready. */
	readonly isReady: boolean;
};

/**
 * The quickest way in which it gives the sound, or null when it cannot: another family of instruments,
 * another number of strings, strings that do not go there. A bass with more strings will do when the
 * ones wanted are among its own.
 *
 * @example
 * takeOver({ show, instrument: instruments.S1, state: states.S1, isHeld: false, nowMs: 0 }, soundOfA1).why // => [{ code: 'same-tuning' }, { code: 'ready' }]
 */
export function takeOver(offered: Offered, sound: Sound): TakeOver | null {
	if (KINDS[offered.instrument.kind].family !== KINDS[sound.kind].family) return null;
	let best: OpenWithCapo | null = null;
	let least = Number.POSITIVE_INFINITY;
	for (const way of waysOf(offered, sound)) {
		const seconds = readySeconds(offered, way);
		if (seconds >= least) continue;
		best = way;
		least = seconds;
	}
	return best && byWay(offered, best, sound);
}

function waysOf({ instrument, state }: Offered, sound: Sound): readonly OpenWithCapo[] {
	const { tuning, capo } = state.context;
	if (instrument.tuning.notes.length === sound.tuning.notes.length) {
		return waysToSound(instrument, { tuning: sound.tuning, capo: 0 }, tuning);
	}
	return hasStringsOf(instrument.kind, tuning, sound.tuning) ? [{ tuning, capo }] : [];
}

/** Infinite where what is in hands would have to be re-tuned. */
function readySeconds(
	{ show, instrument, state, isHeld, nowMs }: Offered,
	way: OpenWithCapo,
): number {
	const { times } = instrument;
	const isInTuning = samePitches(state.context.tuning, way.tuning);
	const isAsItStands = isInTuning && state.context.capo === way.capo;
	if (isHeld) return !isInTuning ? Number.POSITIVE_INFINITY : isAsItStands ? 0 : times.capo;
	if (isAsItStands && readiness(show, { instrument, state }, nowMs).isReady) return times.walk;
	return times.walk + workNeeded({ instrument, state, to: way }).seconds;
}

function byWay(offered: Offered, way: OpenWithCapo, sound: Sound): TakeOver {
	const { show, instrument, state, isHeld, nowMs } = offered;
	const { tuning, capo } = state.context;
	const isAsItStands = samePitches(tuning, way.tuning) && capo === way.capo;
	const { isReady, isStale } = readiness(show, { instrument, state }, nowMs);
	const held: readonly StandInReason[] = [
		{ code: 'in-hands' },
		...(isAsItStands ? [] : [{ code: 'capo', capo: way.capo } as const]),
	];
	return {
		instrument: instrument.id,
		readyInSeconds: readySeconds(offered, way),
		...way,
		why: isHeld ? held : reasons(offered, { way, sound, isAsItStands, isReady, isStale }),
		isReady: isAsItStands && (isHeld || isReady),
	};
}

type Look = {
	readonly way: OpenWithCapo;
	readonly sound: Sound;
	readonly isAsItStands: boolean;
	readonly isReady: boolean;
	readonly isStale: boolean;
};

function reasons({ instrument, state }: Offered, look: Look): readonly StandInReason[] {
	const { way, sound, isAsItStands, isReady, isStale } = look;
	const all: StandInReason[] = [];
	const isOtherBass = instrument.tuning.notes.length !== sound.tuning.notes.length;
	if (isOtherBass) all.push({ code: 'has-strings', strings: sound.tuning.notes.length });
	else if (!isAsItStands) all.push(workReason(instrument, state, way));
	else if (isReady) {
		all.push(
			way.capo === 0 ? { code: 'same-tuning' } : { code: 'sounds', tuning: sound.tuning.name },
		);
	}
	if (isStale) all.push({ code: 'stale' });
	else if (!isReady && isAsItStands) all.push({ code: 'not-ready' });
	else if (isReady && isAsItStands && !isOtherBass) all.push({ code: 'ready' });
	const difference = differenceOf(instrument, sound);
	// Another kind is said even of one that is ready: it is taken in a hurry.
	if (difference !== null && (all.length < 2 || difference.code === 'kind')) all.push(difference);
	return all;
}

function workReason(
	instrument: Instrument,
	state: InstrumentState,
	way: OpenWithCapo,
): StandInReason {
	const change = retuneKind(state.context.tuning.notes, way.tuning.notes, instrument.kind);
	if (change === 'none') return { code: 'capo', capo: way.capo };
	return { code: 'retune', change, capo: state.context.capo === way.capo ? null : way.capo };
}

function differenceOf(instrument: Instrument, { kind, replaced }: Sound): StandInReason | null {
	if (withoutStrings(instrument.kind) !== withoutStrings(kind)) {
		return { code: 'kind', kind: instrument.kind };
	}
	if (replaced === null || instrument.bridge === replaced.bridge) return null;
	return { code: 'bridge', bridge: instrument.bridge };
}

/** `acoustic` of an acoustic-6. */
function withoutStrings(kind: InstrumentKind): string {
	return kind.replace(/-\d+$/, '');
}
