// How one instrument could take over from another: what it would be put into, how long that takes from
// now, and why it would do; else why it cannot, since whoever reads that no backup fits looks at the rack and sees
// some that seem to.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { NightMs } from '../../journal/entry.ts';
import { readiness } from '../../session/readiness.ts';
import type { Instrument, Show } from '../../showfile/show.ts';
import type { InstrumentKind } from '../../tuning/kind.ts';
import { KINDS } from '../../tuning/kind.ts';
import { midiOf } from '../../tuning/pitch.ts';
import { retuneKind } from '../../tuning/retune.ts';
import type { Tuning } from '../../tuning/tuning.ts';
import type { Hand } from '../demand/hand.ts';
import type { OpenWithCapo } from '../demand/same-pitches.ts';
import { hasStringsOf, samePitches, waysToSound } from '../demand/same-pitches.ts';
import { whyAbsent, whyUnplayable } from '../demand/why-unplayable.ts';
import type { LeftOut, PlannedHandOver, StandIn, StandInReason } from '../plan.ts';
import { workNeeded } from '../schedule/work-needed.ts';

/** What is to be heard, and what it is usually played on. */
export type Sound = {
	readonly tuning: Tuning;
	readonly kind: InstrumentKind;
	/** What stands to be replaced; null where nothing in particular does. */
	readonly replaced: Instrument | null;
};

/** What backups are looked for on. */
export type Rack = {
	readonly show: Show;
	readonly instruments: Readonly<Record<string, InstrumentState>>;
	/** Whose hands it is in, or about to be in; a player's id. */
	readonly holder: (instrument: string) => string | null;
	readonly handOvers: readonly PlannedHandOver[];
	readonly nowMs: NightMs;
	/** When the song ends in which it is wanted at once; null where none is on. */
	readonly endMs: NightMs | null;
	readonly player: string;
	readonly sound: Sound;
	/** What the song itself names; null for nothing. */
	readonly asked: string | null;
};

/** One that could, in its quickest way. */
export type TakeOver = Pick<StandIn, 'readyInSeconds' | 'why'> & {
	readonly instrument: Instrument;
	/** What is to be put on it. */
	readonly hand: Hand;
	/** It sounds right as it stands and is ready. */
	readonly isReady: boolean;
};

/** What is of the same family, in the order of the file, without what is to be replaced. */
function familyOf({ show, sound }: Pick<Rack, 'show' | 'sound'>): readonly Instrument[] {
	const { family } = KINDS[sound.kind];
	return show.instruments.filter(
		({ id, kind }) => id !== sound.replaced?.id && KINDS[kind].family === family,
	);
}

/**
 * Everything that could take over, in the order of the file, each in its quickest way.
 *
 * @example
 * takeOvers({ ...rack, player: 'ash', sound: soundOfA1 }).find(({ instrument }) => instrument.id === 'S1').why // => [{ code: 'same-tuning' }, { code: 'ready' }]
 */
export function takeOvers(rack: Rack): readonly TakeOver[] {
	return familyOf(rack).flatMap((one) => {
		const found = takeOver(rack, one);
		return 'code' in found ? [] : [found];
	});
}

/**
 * In the order of the file, what is of the family and could not, each with its first reason; that there is no
 * other, where that is so.
 *
 * @example
 * leftOutOf({ ...rack, holder: (id) => (id === 'B3' ? 'bo' : null), player: 'ash', sound: soundOfA1 }) // => [{ code: 'in-hands', instrument: 'B3', player: 'bo' }]
 */
export function leftOutOf(rack: Rack): readonly LeftOut[] {
	const others = familyOf(rack);
	if (others.length === 0) return [{ code: 'no-other', kind: rack.sound.kind }];
	return others.map((one) => takeOver(rack, one)).filter((found) => 'code' in found);
}

/** An instrument as it stands, asked whether it could take over. */
type Offered = {
	readonly instrument: Instrument;
	readonly state: InstrumentState;
	/** The player has it in hands themselves. */
	readonly isHeld: boolean;
	readonly isReady: boolean;
	readonly isStale: boolean;
};

/** The quickest way in which it gives the sound, or the first reason why it cannot. */
function takeOver(rack: Rack, instrument: Instrument): TakeOver | LeftOut {
	const { id } = instrument;
	const { show, sound, player, nowMs } = rack;
	const state = rack.instruments[id];
	if (state === undefined) return { code: 'not-in-show', instrument: id };
	const absent = whyAbsent(instrument, state);
	if (absent !== null) return absent;
	if (state.context.stringsDown.length > 0) return { code: 'string-down', instrument: id };
	const holder = rack.holder(id);
	if (holder !== null && holder !== player) {
		return { code: 'in-hands', instrument: id, player: holder };
	}
	const isHeld = holder === player;
	const { isReady, isStale } = readiness(show, { instrument, state }, nowMs);
	const offered = { instrument, state, isHeld, isReady, isStale };
	const [best] = waysOf(offered, sound)
		.map((way) => ({ way, readyInSeconds: readySeconds(offered, way) }))
		.sort((one, other) => one.readyInSeconds - other.readyInSeconds);
	if (best === undefined) return soundReason(offered, sound);
	const { way, readyInSeconds } = best;
	return {
		instrument,
		hand: { instrument: id, ...way },
		readyInSeconds,
		why: reasons(offered, way, sound),
		isReady: isAsItStands(state, way) && (isHeld || isReady),
	};
}

/** A bass with more strings will do when the ones wanted are among its own; what is in hands is not re-tuned there. */
function waysOf({ instrument, state, isHeld }: Offered, sound: Sound): readonly OpenWithCapo[] {
	const { tuning, capo } = state.context;
	if (instrument.tuning.notes.length === sound.tuning.notes.length) {
		const ways = waysToSound(instrument, { tuning: sound.tuning, capo: 0 }, tuning);
		return isHeld ? ways.filter((way) => samePitches(way.tuning, tuning)) : ways;
	}
	return hasStringsOf(instrument.kind, tuning, sound.tuning) ? [{ tuning, capo }] : [];
}

function isAsItStands({ context }: InstrumentState, way: OpenWithCapo): boolean {
	return samePitches(context.tuning, way.tuning) && context.capo === way.capo;
}

function readySeconds({ instrument, state, isHeld, isReady }: Offered, way: OpenWithCapo): number {
	const { times } = instrument;
	const isThere = isAsItStands(state, way);
	if (isHeld) return isThere ? 0 : times.capo;
	return times.walk + (isThere && isReady ? 0 : workNeeded({ instrument, state, to: way }).seconds);
}

function reasons(
	{ instrument, state, isHeld, isReady, isStale }: Offered,
	way: OpenWithCapo,
	sound: Sound,
): readonly StandInReason[] {
	const isThere = isAsItStands(state, way);
	if (isHeld) {
		return [{ code: 'in-hands' }, ...(isThere ? [] : [{ code: 'capo', capo: way.capo } as const])];
	}
	const all: StandInReason[] = [];
	const isOtherBass = instrument.tuning.notes.length !== sound.tuning.notes.length;
	if (isOtherBass) all.push({ code: 'has-strings', strings: sound.tuning.notes.length });
	else if (!isThere) all.push(workReason(instrument, state, way));
	else if (isReady && way.capo === 0) all.push({ code: 'same-tuning' });
	else if (isReady) all.push({ code: 'sounds', tuning: sound.tuning.name });
	if (isStale) all.push({ code: 'stale' });
	else if (!isReady && isThere) all.push({ code: 'not-ready' });
	else if (isReady && isThere && !isOtherBass) all.push({ code: 'ready' });
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
	// `acoustic` of an acoustic-6.
	const withoutStrings = (one: InstrumentKind) => one.replace(/-\d+$/, '');
	if (withoutStrings(instrument.kind) !== withoutStrings(kind)) {
		return { code: 'kind', kind: instrument.kind };
	}
	if (replaced === null || instrument.bridge === replaced.bridge) return null;
	return { code: 'bridge', bridge: instrument.bridge };
}

/** Why it cannot be brought to the sound. */
function soundReason({ instrument, state }: Offered, { tuning }: Sound): LeftOut {
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
