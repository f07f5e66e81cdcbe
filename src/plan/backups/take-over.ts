// How one instrument could take over from another: what it would be put into, how long that takes from
// now, and in a few words why it would do.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { NightMs } from '../../journal/entry.ts';
import { readiness } from '../../session/readiness.ts';
import type { Instrument, Show } from '../../showfile/show.ts';
import type { InstrumentKind } from '../../tuning/kind.ts';
import { KINDS } from '../../tuning/kind.ts';
import { retuneKind } from '../../tuning/retune.ts';
import type { Tuning } from '../../tuning/tuning.ts';
import { hasStringsOf } from '../demand/has-strings-of.ts';
import type { OpenWithCapo } from '../demand/same-pitches.ts';
import { samePitches } from '../demand/same-pitches.ts';
import { waysToSound } from '../demand/ways-to-sound.ts';
import type { StandIn } from '../plan.ts';
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

export type TakeOver = Omit<StandIn, 'why' | 'later'> & {
	/** It sounds right as it stands and is ready. */
	readonly isReady: boolean;
	/** Why it would do, in a few words each. */
	readonly words: readonly string[];
};

/**
 * The quickest way in which it gives the sound, or null when it cannot: another family of instruments,
 * another number of strings, strings that do not go there. A bass with more strings will do when the
 * ones wanted are among its own.
 *
 * @example
 * takeOver({ show, instrument: instruments.S1, state: states.S1, isHeld: false, nowMs: 0 }, soundOfA1).words // => ['same tuning', 'ready']
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
	const held = ['in hands already', ...(isAsItStands ? [] : [capoWords(way.capo)])];
	return {
		instrument: instrument.id,
		readyInSeconds: readySeconds(offered, way),
		...way,
		words: isHeld ? held : whyWords(offered, { way, sound, isAsItStands, isReady, isStale }),
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

function whyWords({ instrument, state }: Offered, look: Look): readonly string[] {
	const { way, sound, isAsItStands, isReady, isStale } = look;
	const words: string[] = [];
	const isOtherBass = instrument.tuning.notes.length !== sound.tuning.notes.length;
	if (isOtherBass) {
		words.push(
			`has the ${STRING_WORDS[sound.tuning.notes.length] ?? ''} strings`.replace('  ', ' '),
		);
	} else if (!isAsItStands) words.push(workWords(instrument, state, way));
	else if (isReady) words.push(way.capo === 0 ? 'same tuning' : `sounds ${sound.tuning.name}`);
	if (isStale) words.push('stale');
	else if (!isReady && isAsItStands) words.push('not ready');
	else if (isReady && isAsItStands && !isOtherBass) words.push('ready');
	const difference = differenceWords(instrument, sound);
	// Another kind is said even of one that is ready: it is taken in a hurry.
	const isOtherKind = kindWord(instrument.kind) !== kindWord(sound.kind);
	if (difference !== null && (words.length < 2 || isOtherKind)) words.push(difference);
	return words;
}

const STRING_WORDS: Readonly<Record<number, string>> = { 4: 'four', 5: 'five' };

function workWords(instrument: Instrument, state: InstrumentState, way: OpenWithCapo): string {
	const change = retuneKind(state.context.tuning.notes, way.tuning.notes, instrument.kind);
	const capo = state.context.capo === way.capo ? '' : ` and ${capoWords(way.capo)}`;
	switch (change) {
		case 'none':
			return capoWords(way.capo);
		case 'one-string':
			return `retune one string${capo}`;
		case 'two-strings':
			return `retune two strings${capo}`;
		case 'all-same-interval':
			return `retune all strings${capo}`;
		case 'other':
			return `retune${capo}`;
	}
}

function capoWords(capo: number): string {
	return capo === 0 ? 'capo off' : `capo ${capo}`;
}

/** "acoustic" of an acoustic-6. */
function kindWord(kind: InstrumentKind): string {
	return kind.replace(/-\d+$/, '');
}

function differenceWords(instrument: Instrument, { kind, replaced }: Sound): string | null {
	const own = kindWord(instrument.kind);
	if (own !== kindWord(kind)) return own;
	if (replaced === null || instrument.bridge === replaced.bridge) return null;
	return `${instrument.bridge} bridge`;
}
