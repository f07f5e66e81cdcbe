// A note that an instrument rings at through the loudspeakers: what was typed as hertz, which open string it may
// be, and which part of the body.

import type { InstrumentKind } from './kind.ts';
import { centsBetween, hertz, midiOf, parsePitch, transposeName } from './pitch.ts';

/** What equalisers reach, in hertz. */
const LOWEST_HERTZ = 25;
const HIGHEST_HERTZ = 20_000;
/** A string answers to what is no further from it than this: common practice, no source. */
const NEAR_CENTS = 50;
/** Of a string's own partials these ring: common practice, no source. */
const PARTIALS = 4;

/**
 * Hertz of a frequency or a note as people type it; null for anything else, and outside what equalisers reach.
 *
 * @example
 * readRinging('147 Hz', 440) // => 147
 * readRinging('A2', 440) // => 110
 * readRinging('loud', 440) // => null
 */
export function readRinging(text: string, referenceHertz: number): number | null {
	const [, digits] = /^\s*(\d{2,5}(?:[.,]\d+)?)\s*(?:hz)?\s*$/i.exec(text) ?? [];
	const pitch = digits === undefined ? parsePitch(text) : null;
	const typed =
		digits !== undefined
			? Number(digits.replace(',', '.'))
			: pitch === null
				? null
				: hertz(pitch.midi, referenceHertz);
	return typed === null || typed < LOWEST_HERTZ || typed > HIGHEST_HERTZ ? null : typed;
}

/** `cents`: how far the frequency lies above the note. */
export type NearNote = { readonly note: string; readonly cents: number };

/**
 * The nearest note of equal temperament.
 *
 * @example
 * nearestNote(147, 440).note // => 'D3'
 */
export function nearestNote(frequency: number, referenceHertz: number): NearNote {
	const midi = Math.round(69 + centsBetween(referenceHertz, frequency) / 100);
	return {
		note: transposeName('A4', midi - 69),
		cents: centsBetween(hertz(midi, referenceHertz), frequency),
	};
}

export type RingingString = {
	/** Its number; the highest is the first of a tuning's notes. */
	readonly string: number;
	readonly note: string;
	/** 1 for the open string itself, 2 for its octave and so on. */
	readonly partial: number;
	readonly cents: number;
};

/**
 * The open strings that a frequency may set ringing, by themselves or by a partial, the nearest partial first.
 *
 * @example
 * ringingStrings(147, { notes: ['E2', 'A2', 'D3'], referenceHertz: 440 })[0].string // => 1
 */
export function ringingStrings(
	frequency: number,
	{ notes, referenceHertz }: { readonly notes: readonly string[]; readonly referenceHertz: number },
): readonly RingingString[] {
	return notes
		.flatMap((note, at): readonly RingingString[] => {
			const open = hertz(midiOf(note), referenceHertz);
			return Array.from({ length: PARTIALS }, (_, index) => ({
				string: notes.length - at,
				note,
				partial: index + 1,
				cents: centsBetween(open * (index + 1), frequency),
			})).filter(({ cents }) => Math.abs(cents) <= NEAR_CENTS);
		})
		.toSorted(
			(one, other) => one.partial - other.partial || Math.abs(one.cents) - Math.abs(other.cents),
		);
}

/** The air that goes in and out of the openings, or the wood of the top. */
export type BodyRegion = 'air' | 'top';

type Range = readonly [from: number, to: number];

/** Hertz at which bodies of usual size ring; from memory, common practice, no source. */
const BODIES: Partial<Record<InstrumentKind, Readonly<Record<BodyRegion, Range>>>> = {
	'acoustic-6': { air: [85, 130], top: [165, 250] },
	'acoustic-12': { air: [85, 130], top: [165, 250] },
	'nylon-6': { air: [85, 125], top: [165, 240] },
	'upright-4': { air: [55, 72], top: [88, 130] },
};

/**
 * The part of the body that a frequency may be; null where it is none, or nothing is known of the kind.
 *
 * @example
 * bodyRegion(100, 'acoustic-6') // => 'air'
 */
export function bodyRegion(frequency: number, kind: InstrumentKind): BodyRegion | null {
	const body = BODIES[kind];
	if (body === undefined) return null;
	const isIn = ([from, to]: Range) => frequency >= from && frequency <= to;
	return isIn(body.air) ? 'air' : isIn(body.top) ? 'top' : null;
}

/**
 * Whether bodies of this kind are known to ring.
 *
 * @example
 * hasRingingBody('upright-4') // => true
 */
export function hasRingingBody(kind: InstrumentKind): boolean {
	return BODIES[kind] !== undefined;
}
