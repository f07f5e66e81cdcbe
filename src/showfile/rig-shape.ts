// What may stand in a show file of the rig: the sound path, what feeds it, what pedals are sent.

import * as z from 'zod/mini';

import { PART_KINDS } from './rig.ts';
import {
	capacity,
	choice,
	duration,
	id,
	metres,
	milliseconds,
	number,
	ohms,
	reference,
	words,
	yesOrNo,
} from './scalar-shape.ts';
import { optional } from './shared-shape.ts';
import { keyed, oneOrMore } from './strict-shape.ts';

const milliamps = optional(number({ from: 0, to: 100_000 }));
const volts = optional(number({ from: 0, to: 60 }));
const centre = optional(choice(['negative', 'positive']));
const current = optional(choice(['ac', 'dc']));
const hours = number({ from: 0, to: 100_000 });
/** MIDI 1.0: a data byte has seven bits. */
const sevenBits = optional(number({ from: 0, to: 127, isWhole: true }));

/** On an output of a supply, on a battery of its own, or on either. */
export const power = keyed({
	supply: optional(reference),
	output: optional(reference),
	ma: milliamps,
	volts,
	centre,
	current,
	battery: optional(capacity),
	'hours-used': optional(hours),
});

/** The battery of a pack. */
export const packBattery = keyed({ hours, used: optional(hours) });

const faultTraits = {
	chance: optional(number({ from: 0, to: 1_000_000 })),
	test: optional(duration(0, '20s')),
	swap: optional(duration(0, '30s')),
	spare: optional(words),
};

const arrival = {
	distance: optional(metres),
	delay: optional(milliseconds),
	polarity: optional(choice(['normal', 'inverted'])),
};

const switched = optional(choice(['feet', 'tech', 'midi']));

const message = keyed({
	// MIDI 1.0: controllers 0 and 32 together, fourteen bits.
	bank: optional(number({ from: 0, to: 16_383, isWhole: true })),
	program: sevenBits,
	cc: sevenBits,
	value: sevenBits,
	note: sevenBits,
	velocity: sevenBits,
});

const messages = optional(oneOrMore(message));

const midi = keyed({
	channel: number({ from: 1, to: 16, isWhole: true }),
	on: messages,
	off: messages,
	scenes: optional(z.record(z.string(), oneOrMore(message))),
	tempo: optional(
		z.union([
			choice(['clock']),
			keyed({ cc: number({ from: 0, to: 127, isWhole: true }), value: sevenBits }),
		]),
	),
});

/** A pedal of a board. What else is said of it is kept. */
export const pedal = z.catchall(
	z.object({
		id,
		name: optional(words),
		input: optional(ohms),
		output: optional(ohms),
		switched,
		power: optional(power),
		midi: optional(midi),
		controls: optional(oneOrMore(words)),
		...faultTraits,
	}),
	z.unknown(),
);

/** One part of a player's sound path. */
export const rigPart = keyed({
	id,
	kind: choice(PART_KINDS),
	name: optional(words),
	length: optional(metres),
	'pf-per-m': optional(number({ from: 0, to: 10_000 })),
	input: optional(ohms),
	output: optional(ohms),
	ohms: optional(ohms),
	watts: optional(number({ from: 0, to: 100_000 })),
	tap: optional(ohms),
	taps: optional(oneOrMore(ohms)),
	tube: optional(yesOrNo),
	wired: optional(choice(['parallel', 'series'])),
	switched,
	power: optional(power),
	...arrival,
	...faultTraits,
});

/** A box that feeds pedals. */
export const supply = keyed({
	id,
	name: optional(words),
	outputs: z.array(keyed({ id, volts, ma: milliamps, centre, current })),
});

const source = { name: optional(words), ...arrival };

/** What an instrument gives: of electronics, of a piezo, of a microphone. */
export const output = oneOrMore(
	z.union([
		keyed({ ...source, ohms }),
		keyed({ ...source, pf: number({ from: 1, to: 1_000_000 }) }),
		keyed({ ...source, name: words }),
		keyed({ ...source, distance: metres }),
	]),
);

export type ShapedPower = z.output<typeof power>;
export type ShapedPedal = z.output<typeof pedal>;
export type ShapedRigPart = z.output<typeof rigPart>;
export type ShapedMessage = z.output<typeof message>;

export type ShapedOutput = z.output<typeof output>;
