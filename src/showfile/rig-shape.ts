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
import { keyed, oneOrMore } from './strict-shape.ts';

const milliamps = z.optional(number({ from: 0, to: 100_000 }));
const volts = z.optional(number({ from: 0, to: 60 }));
const centre = z.optional(choice(['negative', 'positive']));
const current = z.optional(choice(['ac', 'dc']));
const hours = number({ from: 0, to: 100_000 });
/** MIDI 1.0: a data byte has seven bits. */
const sevenBits = z.optional(number({ from: 0, to: 127, isWhole: true }));

/** On an output of a supply, on a battery of its own, or on either. */
export const power = keyed({
	supply: z.optional(reference),
	output: z.optional(reference),
	ma: milliamps,
	volts,
	centre,
	current,
	battery: z.optional(capacity),
	'hours-used': z.optional(hours),
});

/** The battery of a pack. */
export const packBattery = keyed({ hours, used: z.optional(hours) });

const faultTraits = {
	chance: z.optional(number({ from: 0, to: 1_000_000 })),
	test: z.optional(duration(0, '20s')),
	swap: z.optional(duration(0, '30s')),
	spare: z.optional(words),
};

const arrival = {
	distance: z.optional(metres),
	delay: z.optional(milliseconds),
	polarity: z.optional(choice(['normal', 'inverted'])),
};

const switched = z.optional(choice(['feet', 'tech', 'midi']));

const message = keyed({
	// MIDI 1.0: controllers 0 and 32 together, fourteen bits.
	bank: z.optional(number({ from: 0, to: 16_383, isWhole: true })),
	program: sevenBits,
	cc: sevenBits,
	value: sevenBits,
	note: sevenBits,
	velocity: sevenBits,
});

const messages = z.optional(oneOrMore(message));

const midi = keyed({
	channel: number({ from: 1, to: 16, isWhole: true }),
	on: messages,
	off: messages,
	scenes: z.optional(z.record(z.string(), oneOrMore(message))),
	tempo: z.optional(
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
		name: z.optional(words),
		input: z.optional(ohms),
		output: z.optional(ohms),
		switched,
		power: z.optional(power),
		midi: z.optional(midi),
		controls: z.optional(oneOrMore(words)),
		...faultTraits,
	}),
	z.unknown(),
);

/** One part of a player's sound path. */
export const rigPart = keyed({
	id,
	kind: choice(PART_KINDS),
	name: z.optional(words),
	length: z.optional(metres),
	'pf-per-m': z.optional(number({ from: 0, to: 10_000 })),
	input: z.optional(ohms),
	output: z.optional(ohms),
	ohms: z.optional(ohms),
	watts: z.optional(number({ from: 0, to: 100_000 })),
	tap: z.optional(ohms),
	taps: z.optional(oneOrMore(ohms)),
	tube: z.optional(yesOrNo),
	wired: z.optional(choice(['parallel', 'series'])),
	switched,
	power: z.optional(power),
	...arrival,
	...faultTraits,
});

/** A box that feeds pedals. */
export const supply = keyed({
	id,
	name: z.optional(words),
	outputs: z.array(keyed({ id, volts, ma: milliamps, centre, current })),
});

const source = { name: z.optional(words), ...arrival };

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
