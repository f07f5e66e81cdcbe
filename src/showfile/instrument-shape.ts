// What may stand in a show file of an instrument, and of what is said of all instruments at once: how long
// work takes, how long ready lasts, what strings weigh.

import * as z from 'zod/mini';

import { INSTRUMENT_KINDS } from '../tuning/kind.ts';
import { output, power } from './rig-shape.ts';
import {
	choice,
	date,
	duration,
	gauge,
	id,
	length,
	number,
	reference,
	scale,
	slot,
	words,
	yesOrNo,
} from './scalar-shape.ts';
import { keyed, oneOrMore } from './strict-shape.ts';

const workSeconds = z.optional(duration(0, '45s or 4m30s'));

/** Seconds for each piece of work. */
export const workTimes = keyed({
	'touch-up': workSeconds,
	'one-string': workSeconds,
	'two-strings': workSeconds,
	'all-strings': workSeconds,
	'other-tuning': workSeconds,
	wipe: workSeconds,
	capo: workSeconds,
	walk: workSeconds,
	restring: workSeconds,
	'further-string': workSeconds,
	'hand-over': workSeconds,
});

/** Seconds that "ready" lasts. */
export const recheckAfter = z.optional(duration(1, '15m'));

// From the thinnest plain string to the thickest of a bass, with room to spare.
/** What a string weighs, in grams a metre, by its gauge. */
export const unitMass = z.record(z.string(), number({ from: 0.05, to: 100 }));

const lengths = z.optional(oneOrMore(length));

/** What the player likes: lengths as bass side and treble side, or one for both. */
const setUp = keyed({
	action: lengths,
	'action-first': lengths,
	relief: z.optional(length),
	pickup: lengths,
	nut: lengths,
	'saddle-screw': z.optional(length),
});

/** The fret that a capo is on, 0 for none. */
export const capoFret = number({ from: 0, to: 12, isWhole: true });

const instead = z.union([
	reference,
	keyed({ instrument: reference, tuning: z.optional(words), capo: z.optional(capoFret) }),
]);

/** One entry of `instruments`. */
export const instrument = keyed({
	id,
	name: z.optional(words),
	slot: z.optional(slot),
	kind: choice(INSTRUMENT_KINDS),
	for: z.optional(oneOrMore(reference)),
	tuning: words,
	scale: z.optional(scale),
	strings: z.optional(z.array(gauge)),
	bridge: z.optional(choice(['fixed', 'floating'])),
	features: z.optional(oneOrMore(words)),
	pickups: z.optional(words),
	pack: z.optional(reference),
	case: z.optional(words),
	spare: z.optional(yesOrNo),
	instead: z.optional(oneOrMore(instead)),
	gear: z.optional(id),
	serial: z.optional(words),
	owner: z.optional(words),
	'hired-from': z.optional(words),
	'recheck-after': recheckAfter,
	strung: z.optional(
		keyed({
			on: z.optional(date),
			hours: z.optional(number({ from: 0, to: 100_000 })),
		}),
	),
	times: z.optional(workTimes),
	leave: z.optional(words),
	notes: z.optional(words),
	'unit-mass': z.optional(unitMass),
	output: z.optional(output),
	power: z.optional(power),
	setup: z.optional(setUp),
});

export type ShapedInstrument = z.output<typeof instrument>;
export type ShapedInstead = z.output<typeof instead>;
export type ShapedSetUp = z.output<typeof setUp>;
