// All that a hand on a tuner wants to know of one instrument: what it is in and what is wanted, a target
// for each string, in which order, what is heard, what the strings bear and what the ear will say.

import { pitchSeconds } from '../plan/schedule/work-needed.ts';
import { offsetCents, stringsOf, type Tuned, targetHertz } from '../showfile/instrument-strings.ts';
import type { Instrument, Show } from '../showfile/show.ts';
import { type CapoSound, notesHeard, sameSounds } from '../tuning/capo-shapes.ts';
import type { ChordShape, HeardPair } from '../tuning/chord-shape.ts';
import { shapeByEar, shapeOnStrings } from '../tuning/chord-shape.ts';
import { KINDS } from '../tuning/kind.ts';
import { midiOf } from '../tuning/pitch.ts';
import { type RetuneStep, retuneSteps } from '../tuning/retune-steps.ts';
import { type BearingString, totalNewtons } from '../tuning/string-set.ts';
import type { Tuning } from '../tuning/tuning.ts';

/** What a card is made of. */
export type CardAsked = {
	readonly instrument: Instrument;
	readonly from: Tuning;
	readonly to: Tuning;
	readonly capo: number;
	/** A player's id; null for nobody in particular. */
	readonly player: string | null;
	readonly referenceHertz: number;
	/** Strings under the capo; all when left out. */
	readonly covers?: readonly number[];
};

export type CardString = {
	readonly string: number;
	/** What the open string is tuned to. */
	readonly note: string;
	readonly hertz: number;
	/** Offset in the target. */
	readonly cents: number;
	/** Semitones from what it is in. */
	readonly move: number;
	/** With the capo on. */
	readonly sounds: string;
	/** Null where gauge or scale are not known. */
	readonly bearing: BearingString | null;
};

export type TuningCard = CardAsked & {
	/** Highest-numbered string first. */
	readonly strings: readonly CardString[];
	/** On the neck, null where gauges or scale are not known. */
	readonly total: { readonly newtons: number; readonly uncertainty: number } | null;
	/** Newtons more than in the tuning that the file gives it. */
	readonly changeNewtons: number | null;
	/** As the plan counts them, the capo put on among them. */
	readonly seconds: number;
	readonly steps: readonly RetuneStep[];
	/** Neighbouring open strings as they are tuned. */
	readonly byEar: readonly HeardPair[];
};

/**
 * The card of an instrument between two tunings.
 *
 * @example
 * tuningCard(show, { instrument: instruments.A1, from: eStandard, to: dropD, capo: 0, player: null, referenceHertz: 440 }).strings[0].note // => 'D2'
 */
export function tuningCard(show: Show, asked: CardAsked): TuningCard {
	const { instrument, from, to, capo, covers } = asked;
	const tuned = { ...asked, tuning: to };
	const hertz = targetHertz(show, tuned);
	const cents = offsetCents(show, tuned);
	const bearing = stringsOf(show, tuned);
	const heard = notesHeard(to.notes, { fret: capo, ...(covers ? { covers } : {}) });
	const strings = to.notes.map((note, index): CardString => {
		const string = to.notes.length - index;
		return {
			string,
			note,
			hertz: hertz[index] ?? 0,
			cents: cents[index] ?? 0,
			move: midiOf(note) - midiOf(from.notes[index] ?? note),
			sounds: heard[index] ?? note,
			bearing: bearing.find((one) => one.string === string) ?? null,
		};
	});
	const total = bearing.length === 0 ? null : totalNewtons(bearing);
	return {
		...asked,
		strings,
		total,
		changeNewtons:
			total && total.newtons - newtonsIn(show, bearing, { ...asked, tuning: instrument.tuning }),
		seconds: pitchSeconds(instrument, from, to) + (capo > 0 ? instrument.times.capo : 0),
		// Nobody is told how to reach a pitch that a string does not live to see.
		steps: breaking(strings).length > 0 ? [] : retuneSteps(from.notes, to.notes, instrument.bridge),
		byEar: shapeByEar(
			strings,
			strings.map(() => 0),
		),
	};
}

/**
 * Numbers of the strings that break before their pitch.
 *
 * @example
 * breaking([{ string: 1, bearing: null }]) // => []
 */
export function breaking(
	strings: readonly Pick<CardString, 'string' | 'bearing'>[],
): readonly number[] {
	return strings
		.filter(({ bearing }) => (bearing?.strengthLeft ?? 1) < 0)
		.map(({ string }) => string);
}

/** Newtons of the same strings in another tuning: tension goes with the square of the pitch. */
function newtonsIn(show: Show, strings: readonly BearingString[], tuned: Tuned): number {
	const hertz = targetHertz(show, tuned);
	return strings.reduce(
		(sum, one) => sum + one.newtons * ((hertz.at(-one.string) ?? one.hertz) / one.hertz) ** 2,
		0,
	);
}

/**
 * The card's capo in other shapes; none where the shapes that everybody has, those of
 * E standard on six courses, do not fit.
 *
 * @example
 * capoOtherwise(tuningCard(show, { instrument: instruments.A1, from: eStandard, to: dropD, capo: 2, player: null, referenceHertz: 440 })) // => []
 */
export function capoOtherwise({ instrument, to, capo }: TuningCard): readonly CapoSound[] {
	const { family } = KINDS[instrument.kind];
	const fits = to.name === 'E standard' && (family === 'guitar' || family === 'twelve');
	return fits ? sameSounds({ capo, shape: 'E' }) : [];
}

/** Many strings go up, or one goes far: common practice, no source. */
export function isTunedFarUp({ strings }: Pick<TuningCard, 'strings'>): boolean {
	const up = strings.filter(({ move }) => move > 0);
	return up.length >= 3 || up.some(({ move }) => move >= 3);
}

/**
 * A chord shape on this card's strings, or courses, to the ear; with its capo on, nothing changes but the
 * pitch.
 *
 * @example
 * shapeOnCard(tuningCard(show, { instrument: instruments.A1, from: eStandard, to: eStandard, capo: 0, player: null, referenceHertz: 440 }), [0, 2]).map(({ interval }) => interval) // => ['P5']
 */
export function shapeOnCard(card: TuningCard, shape: ChordShape): readonly HeardPair[] {
	const up = 2 ** (card.capo / 12);
	const perCourse = KINDS[card.instrument.kind].stringsPerCourse;
	const heard = card.strings.map(({ sounds, note, hertz }) => ({
		note: sounds,
		hertz: sounds === note ? hertz : hertz * up,
	}));
	const asked = { strings: heard.length, perCourse };
	return shapeByEar(heard, shapeOnStrings(shape, asked) ?? shape);
}
