// Everything that would do for a section of a player: what is named, what sounds the same where that cannot
// be had, what a need can be met with.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { Instrument, Show } from '../../showfile/show.ts';
import type { Demand, NeedsPart } from './demand.ts';
import type { Hand } from './hand.ts';
import { instrumentById } from './instrument-by-id.ts';
import { type OpenWithCapo, samePitches, waysToSound } from './same-pitches.ts';
import { whyAbsent } from './why-unplayable.ts';

/** An instrument in an open tuning with a capo that would do. */
export type Option = {
	readonly hand: Hand;
	/** Points against it where it stands in for what is named: counted when it is taken into hands. */
	readonly backup: number;
	/** Points against it where nothing is named. */
	readonly preference: number;
};

/** The rack as it is when it is asked what would do. */
export type Rack = {
	readonly show: Show;
	readonly instruments: Readonly<Record<string, InstrumentState>>;
	/** Whether the strings on it can be played then. */
	readonly isStrung: (instrument: string) => boolean;
};

/** Points against a backup, each place down in the list of what is played instead, without that list one that is no spare, and a capo; the plan's model. */
const PLACE = 10;
const NO_SPARE = 5;
const CAPO = 1;

/** What an instrument is in where it can be had and played then; null otherwise. */
function hadOn({ instruments, isStrung }: Rack, one: Instrument): InstrumentState | null {
	const state = instruments[one.id];
	const isHad = state !== undefined && whyAbsent(one, state) === null && isStrung(one.id);
	return isHad ? state : null;
}

/**
 * What sounds as the named one does, best first by the list of what is played instead of it; without that
 * list every instrument of its kind that this player may have, in the order of the file, lowest fret first.
 *
 * @example
 * substitutesFor(rack, { demand: namedA1, player: 'ash' }).map(({ hand, backup }) => [hand.instrument, hand.capo, backup])[0] // => ['A1', 1, 6]
 */
export function substitutesFor(
	rack: Rack,
	{
		demand: { instrument, tuning, capo },
		player,
	}: { readonly demand: Extract<Demand, { kind: 'named' }>; readonly player: string },
): readonly Option[] {
	const sounds = { tuning, capo };
	const soundingOn = (one: Instrument, { context }: InstrumentState) =>
		waysToSound(one, sounds, context.tuning).filter(
			(way) => one !== instrument || !isSameWay(way, sounds),
		);
	const options = (one: Instrument, ways: readonly OpenWithCapo[], points: number) =>
		ways.map((way) => ({
			hand: { instrument: one.id, ...way },
			backup: points + (way.capo > 0 ? CAPO : 0),
			preference: 0,
		}));
	if (instrument.instead === undefined) {
		return rack.show.instruments
			.filter((one) => one.kind === instrument.kind && mayHave(one, player))
			.flatMap((one) => {
				const state = hadOn(rack, one);
				return state ? options(one, soundingOn(one, state), one.spare ? 0 : NO_SPARE) : [];
			});
	}
	return instrument.instead.flatMap((listed, place) => {
		const one = instrumentById(rack.show).get(listed.instrument);
		const state = one && hadOn(rack, one);
		if (!one || !state) return [];
		const { tuning: open, capo: fret } = listed;
		if (open === null) return options(one, soundingOn(one, state), PLACE * place);
		const isThere = one.bridge === 'fixed' || samePitches(state.context.tuning, open);
		return isThere ? options(one, [{ tuning: open, capo: fret }], PLACE * place) : [];
	});
}

/**
 * What meets the need, in the order of the file, lowest fret first.
 *
 * @example
 * choicesFor(rack, { part: needsEStandard, player: 'ash' }).map(({ hand }) => hand.instrument)[0] // => 'A1'
 */
export function choicesFor(rack: Rack, { part, player }: NeedAsked): readonly Option[] {
	return rack.show.instruments.flatMap((one): readonly Option[] => {
		const state = isOfNeed(one, { part, player }) ? hadOn(rack, one) : null;
		if (state === null) return [];
		return waysToNeed(one, part, state).map((way) => ({
			hand: { instrument: one.id, ...way },
			backup: 0,
			preference: preferenceCost(one, way.capo, part),
		}));
	});
}

/**
 * Whether this hand meets the need, whether or not its instrument can be had.
 *
 * @example
 * meetsNeed(rack, { part: needsEStandard, player: 'ash', hand: handA1 }) // => true
 */
export function meetsNeed(
	{ show, instruments }: Omit<Rack, 'isStrung'>,
	{ hand, ...asked }: NeedAsked & { readonly hand: Hand },
): boolean {
	const instrument = instrumentById(show).get(hand.instrument);
	const state = instruments[hand.instrument];
	if (instrument === undefined || state === undefined || !isOfNeed(instrument, asked)) return false;
	return waysToNeed(instrument, asked.part, state).some((way) => isSameWay(way, hand));
}

type NeedAsked = { readonly part: NeedsPart; readonly player: string };

function isOfNeed(instrument: Instrument, { part, player }: NeedAsked): boolean {
	return (
		instrument.kind === part.instrumentKind &&
		mayHave(instrument, player) &&
		part.features.every((feature) => instrument.features.includes(feature))
	);
}

function waysToNeed(instrument: Instrument, { sounds }: NeedsPart, { context }: InstrumentState) {
	return waysToSound(instrument, { tuning: sounds, capo: 0 }, context.tuning);
}

/**
 * Whether it is this player's, or nobody's in particular.
 *
 * @example
 * mayHave(instruments.A1, 'ash') // => true
 */
export function mayHave(instrument: Pick<Instrument, 'for'>, player: string): boolean {
	return instrument.for === null || instrument.for.includes(player);
}

function isSameWay(one: OpenWithCapo, other: OpenWithCapo): boolean {
	return one.capo === other.capo && samePitches(one.tuning, other.tuning);
}

/**
 * 10 where another was preferred, 5 for a spare, 1 for a capo. Common practice, no source.
 *
 * @example
 * preferenceCost(instruments.S1, 1, { prefer: 'A1' }) // => 16
 */
export function preferenceCost(
	instrument: Instrument,
	capo: number,
	{ prefer }: { readonly prefer: string | null },
): number {
	const isOther = prefer !== null && prefer !== instrument.id;
	return (isOther ? 10 : 0) + (instrument.spare ? 5 : 0) + (capo > 0 ? 1 : 0);
}
