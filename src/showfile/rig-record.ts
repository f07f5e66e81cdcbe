// The rig of a show as a night's journal keeps it. Nights that began before it was known have none.

import * as z from 'zod/mini';

import {
	boolean,
	byName,
	later,
	list,
	number,
	numberOrNull,
	text,
	textOrNull,
} from './form-pieces.ts';
import {
	type Arrival,
	type FaultTraits,
	type MidiMessage,
	type Output,
	PART_KINDS,
	type PedalTraits,
	type Power,
	type RigPart,
	type Supply,
	type SupplyOutput,
} from './rig.ts';

/** Has every field, those too that may be left out: one that is new is not forgotten here. */
type Whole<Of> = { readonly [Field in keyof Of]-?: z.ZodMiniType };

/** The pieces of it; made when they are asked for, since few commands come to a night. */
export function rigForms() {
	const CENTRE = z.nullable(z.enum(['negative', 'positive']));

	const CURRENT = later(z.enum(['ac', 'dc']));

	const POWER = z.object({
		supply: textOrNull,
		output: textOrNull,
		milliamps: numberOrNull,
		volts: numberOrNull,
		centre: CENTRE,
		current: CURRENT,
		battery: z.nullable(z.object({ milliampHours: number, hoursUsed: number })),
	} satisfies Whole<Power>);

	const FAULT = {
		chance: later(number),
		testSeconds: later(number),
		swapSeconds: later(number),
		spare: later(text),
	} satisfies Whole<FaultTraits>;

	const ARRIVAL = {
		distanceMetres: later(number),
		delayMilliseconds: later(number),
		isInverted: later(boolean),
	} satisfies Whole<Arrival>;

	const SWITCHED = z.enum(['feet', 'tech', 'midi']);

	const MESSAGE: z.ZodMiniType<MidiMessage> = z.discriminatedUnion('kind', [
		z.object({ kind: z.literal('bank'), bank: number }),
		z.object({ kind: z.literal('program'), program: number }),
		z.object({ kind: z.literal('control'), controller: number, value: number }),
		z.object({ kind: z.literal('note'), note: number, velocity: number }),
	]);

	const MIDI = z.object({
		channel: number,
		on: list(MESSAGE),
		off: list(MESSAGE),
		scenes: byName(list(MESSAGE)),
		tempo: z.nullable(
			z.discriminatedUnion('kind', [
				z.object({ kind: z.literal('tap'), controller: number, value: number }),
				z.object({ kind: z.literal('clock') }),
			]),
		),
	});

	/** The fields of a pedal beside its names. */
	const PEDAL_TRAITS = {
		...FAULT,
		inputOhms: later(number),
		outputOhms: later(number),
		switched: later(SWITCHED),
		power: later(POWER),
		midi: later(MIDI),
		controls: later(list(text)),
	} satisfies Whole<PedalTraits>;

	const PART = z.object({
		...FAULT,
		...ARRIVAL,
		id: text,
		name: text,
		kind: z.enum(PART_KINDS),
		metres: later(number),
		picofaradsPerMetre: later(number),
		inputOhms: later(number),
		outputOhms: later(number),
		ohms: later(number),
		watts: later(number),
		tap: later(number),
		taps: later(list(number)),
		isTube: later(boolean),
		wired: later(z.enum(['parallel', 'series'])),
		switched: later(SWITCHED),
		power: later(POWER),
	} satisfies Whole<RigPart>);

	/** Each player's sound path. */
	const RIGS = byName(list(PART));

	const SUPPLIES = list(
		z.object({
			id: text,
			name: text,
			outputs: list(
				z.object({
					...{ id: text, volts: numberOrNull, milliamps: numberOrNull },
					...{ centre: CENTRE, current: CURRENT },
				} satisfies Whole<SupplyOutput>),
			),
		} satisfies Whole<Supply>),
	);

	const ONE_OUTPUT = z.object({
		...ARRIVAL,
		name: later(text),
		ohms: later(number),
		picofarads: later(number),
	} satisfies Whole<Output>);

	const OUTPUT = z.union([ONE_OUTPUT, list(ONE_OUTPUT)]);

	const PACK_BATTERY = z.object({ hours: number, used: number });

	return { OUTPUT, PACK_BATTERY, PEDAL_TRAITS, POWER, RIGS, SUPPLIES };
}
