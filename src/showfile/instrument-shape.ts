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
import { optional } from './shared-shape.ts';
import { keyed, oneOrMore } from './strict-shape.ts';

const workSeconds = optional(duration(0, '45s or 4m30s'));

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
export const recheckAfter = optional(duration(1, '15m'));

// From the thinnest plain string to the thickest of a bass, with room to spare.
/** What a string weighs, in grams a metre, by its gauge. */
export const unitMass = z.record(z.string(), number({ from: 0.05, to: 100 }));

const lengths = optional(oneOrMore(length));

/** What the player likes: lengths as bass side and treble side, or one for both. */
const setUp = keyed({
	action: lengths,
	'action-first': lengths,
	relief: optional(length),
	pickup: lengths,
	nut: lengths,
	'saddle-screw': optional(length),
});

/** The fret that a capo is on, 0 for none. */
export const capoFret = number({ from: 0, to: 12, isWhole: true });

const instead = z.union([
	reference,
	keyed({ instrument: reference, tuning: optional(words), capo: optional(capoFret) }),
]);

/** One entry of `instruments`. */
export const instrument = keyed({
	id,
	name: optional(words),
	slot: optional(slot),
	kind: choice(INSTRUMENT_KINDS),
	for: optional(oneOrMore(reference)),
	tuning: words,
	scale: optional(scale),
	strings: optional(z.array(gauge)),
	bridge: optional(choice(['fixed', 'floating'])),
	features: optional(oneOrMore(words)),
	pickups: optional(words),
	pack: optional(reference),
	case: optional(words),
	spare: optional(yesOrNo),
	instead: optional(oneOrMore(instead)),
	gear: optional(id),
	serial: optional(words),
	owner: optional(words),
	'hired-from': optional(words),
	'recheck-after': recheckAfter,
	strung: optional(
		keyed({
			on: optional(date),
			hours: optional(number({ from: 0, to: 100_000 })),
		}),
	),
	times: optional(workTimes),
	leave: optional(words),
	notes: optional(words),
	'unit-mass': optional(unitMass),
	output: optional(output),
	power: optional(power),
	setup: optional(setUp),
});

export type ShapedInstrument = z.output<typeof instrument>;
export type ShapedInstead = z.output<typeof instead>;
export type ShapedSetUp = z.output<typeof setUp>;
