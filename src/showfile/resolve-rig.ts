// The rig of a show with every supply and output followed.

import { cleanText } from '../base/clean-text.ts';
import type { Linking } from './linking.ts';
import type {
	Arrival,
	FaultTraits,
	MidiMessage,
	Output,
	PedalMidi,
	PedalTraits,
	Power,
	RigPart,
	Supply,
} from './rig.ts';
import type {
	ShapedMessage,
	ShapedOutput,
	ShapedPedal,
	ShapedPower,
	ShapedRigPart,
} from './rig-shape.ts';
import type { ShapedShow } from './shape.ts';
import type { Pedal } from './show.ts';
import type { SourcePath } from './source-node.ts';

/** What following an output needs. */
export type RigLinks = {
	readonly linking: Linking;
	readonly supplies: NonNullable<ShapedShow['supplies']>;
};

/** A show's rigs and supplies; neither where the file gives none. */
export function rigsOf(
	shaped: ShapedShow,
	links: RigLinks,
): { rigs?: Record<string, readonly RigPart[]>; supplies?: readonly Supply[] } {
	return {
		...(shaped.rigs === undefined ? {} : { rigs: resolveRigs(shaped.rigs, links) }),
		...(shaped.supplies === undefined ? {} : { supplies: shaped.supplies.map(supplyOf) }),
	};
}

/** Each player's pedals in order. */
export function boardsOf(shaped: ShapedShow, links: RigLinks): Record<string, readonly Pedal[]> {
	const boards: Record<string, readonly Pedal[]> = {};
	for (const [player, pedals] of Object.entries(shaped.boards ?? {})) {
		const path = ['boards', player];
		links.linking.followPlayerKey(path);
		refuseRepeated(pedals, path, links.linking);
		boards[player] = pedals.map((one, index) => pedalOf(one, [...path, index], links));
	}
	return boards;
}

/** What an instrument says of its output and its battery. */
export function electricsOf(
	{
		output,
		power,
	}: { readonly output?: ShapedOutput | undefined; readonly power?: ShapedPower | undefined },
	path: SourcePath,
	links: RigLinks,
): { output?: Output | readonly Output[]; power?: Power } {
	return {
		...(output === undefined ? {} : { output: oneAlone(output.map(outputOf)) }),
		...(power === undefined ? {} : { power: powerOf(power, [...path, 'power'], links) }),
	};
}

function resolveRigs(
	shaped: NonNullable<ShapedShow['rigs']>,
	links: RigLinks,
): Record<string, readonly RigPart[]> {
	const rigs: Record<string, readonly RigPart[]> = {};
	for (const [player, parts] of Object.entries(shaped)) {
		const path = ['rigs', player];
		links.linking.followPlayerKey(path);
		refuseRepeated(parts, path, links.linking);
		rigs[player] = parts.map((one, index) => partOf(one, [...path, index], links));
	}
	return rigs;
}

function refuseRepeated(
	all: readonly { readonly id: string }[],
	path: SourcePath,
	linking: Linking,
): void {
	const list = String(path[0]);
	for (const [index, { id }] of all.entries()) {
		if (all.findIndex((one) => one.id === id) === index) continue;
		linking.complain([...path, index, 'id'], { code: 'duplicate-id', list, id, first: null });
	}
}

function supplyOf({ id, name, outputs }: NonNullable<ShapedShow['supplies']>[number]): Supply {
	return {
		id,
		name: name ?? id,
		outputs: outputs.map((one) => ({
			id: one.id,
			volts: one.volts ?? null,
			milliamps: one.ma ?? null,
			centre: one.centre ?? null,
			...given({ current: one.current }),
		})),
	};
}

function partOf(shaped: ShapedRigPart, path: SourcePath, links: RigLinks): RigPart {
	const { id, kind, name, length, tap, taps, tube, wired, switched, ohms, watts, power } = shaped;
	return {
		id,
		name: name ?? id,
		kind,
		...given({
			metres: length,
			picofaradsPerMetre: shaped['pf-per-m'],
			inputOhms: shaped.input,
			outputOhms: shaped.output,
			ohms,
			watts,
			tap,
			taps,
			isTube: tube,
			wired,
			switched,
		}),
		...(power === undefined ? {} : { power: powerOf(power, [...path, 'power'], links) }),
		...arrivalOf(shaped),
		...faultTraits(shaped),
	};
}

function pedalOf(shaped: ShapedPedal, path: SourcePath, links: RigLinks): Pedal {
	const { id, name, input, output, switched, power, midi, controls, ...rest } = shaped;
	const { chance: _, test: _test, swap: _swap, spare: _spare, ...extra } = rest;
	const traits: PedalTraits = {
		...given({ inputOhms: input, outputOhms: output, switched, controls }),
		...(power === undefined ? {} : { power: powerOf(power, [...path, 'power'], links) }),
		...(midi === undefined ? {} : { midi: midiOf(midi, [...path, 'midi'], links) }),
		...faultTraits(shaped),
	};
	return { id, name: name ?? id, ...traits, extra: cleanDeep(extra) as Record<string, unknown> };
}

function powerOf(shaped: ShapedPower, path: SourcePath, { linking, supplies }: RigLinks): Power {
	const { supply = null, output = null } = shaped;
	if (supply !== null) linking.follow('supplies', supply, [...path, 'supply']);
	const feeding = supplies.find(({ id }) => id === supply);
	const known = feeding?.outputs.map(({ id }) => id) ?? [];
	if (feeding && output !== null && !known.includes(output)) {
		const said = { code: 'unknown-output', supply: feeding.id, id: output, known } as const;
		linking.complain([...path, 'output'], said);
	}
	return {
		supply,
		output,
		milliamps: shaped.ma ?? null,
		volts: shaped.volts ?? null,
		centre: shaped.centre ?? null,
		...given({ current: shaped.current }),
		battery:
			shaped.battery === undefined
				? null
				: { milliampHours: shaped.battery, hoursUsed: shaped['hours-used'] ?? 0 },
	};
}

function midiOf(
	shaped: NonNullable<ShapedPedal['midi']>,
	path: SourcePath,
	{ linking }: RigLinks,
): PedalMidi {
	const all = (messages: readonly ShapedMessage[] | undefined, at: SourcePath): MidiMessage[] =>
		(messages ?? []).flatMap((one, index) => messagesOf(one, [...at, index], linking));
	const { tempo } = shaped;
	return {
		channel: shaped.channel,
		on: all(shaped.on, [...path, 'on']),
		off: all(shaped.off, [...path, 'off']),
		scenes: Object.fromEntries(
			Object.entries(shaped.scenes ?? {}).map(([name, messages]) => [
				cleanText(name),
				all(messages, [...path, 'scenes', name]),
			]),
		),
		tempo:
			tempo === undefined
				? null
				: tempo === 'clock'
					? { kind: 'clock' }
					: { kind: 'tap', controller: tempo.cc, value: tempo.value ?? 127 },
	};
}

/** In the order in which they are sent: the bank before its program. */
function messagesOf(shaped: ShapedMessage, path: SourcePath, linking: Linking): MidiMessage[] {
	const { bank, program, cc, value, note, velocity } = shaped;
	const lacks =
		cc !== undefined && value === undefined
			? 'value'
			: cc === undefined && value !== undefined
				? 'cc'
				: note === undefined && velocity !== undefined
					? 'note'
					: Object.values(shaped).every((one) => one === undefined)
						? 'anything'
						: null;
	if (lacks !== null) linking.complain(path, { code: 'midi-unclear', lacks });
	return [
		...(bank === undefined ? [] : [{ kind: 'bank', bank } as const]),
		...(program === undefined ? [] : [{ kind: 'program', program } as const]),
		...(cc === undefined || value === undefined
			? []
			: [{ kind: 'control', controller: cc, value } as const]),
		...(note === undefined ? [] : [{ kind: 'note', note, velocity: velocity ?? 127 } as const]),
	];
}

/** Most instruments give one thing. */
function oneAlone(all: readonly Output[]): Output | readonly Output[] {
	const [first, ...others] = all;
	return first === undefined || others.length > 0 ? all : first;
}

function outputOf(shaped: ShapedOutput[number]): Output {
	return {
		...given({
			ohms: 'ohms' in shaped ? shaped.ohms : undefined,
			picofarads: 'pf' in shaped ? shaped.pf : undefined,
		}),
		...given({ name: shaped.name }),
		...arrivalOf(shaped),
	};
}

function arrivalOf({
	distance,
	delay,
	polarity,
}: Pick<ShapedRigPart, 'distance' | 'delay' | 'polarity'>): Arrival {
	return {
		...given({ distanceMetres: distance, delayMilliseconds: delay }),
		...(polarity === 'inverted' ? { isInverted: true } : {}),
	};
}

function faultTraits(shaped: {
	readonly chance?: number | undefined;
	readonly test?: number | undefined;
	readonly swap?: number | undefined;
	readonly spare?: string | undefined;
}): FaultTraits {
	const { chance, test, swap, spare } = shaped;
	return given({ chance, testSeconds: test, swapSeconds: swap, spare });
}

/** Without what the file does not give. */
function given<Fields extends object>(
	fields: Fields,
): { [Field in keyof Fields]?: Exclude<Fields[Field], undefined> } {
	return Object.fromEntries(
		Object.entries(fields).filter(([, value]) => value !== undefined),
	) as never;
}

function cleanDeep(value: unknown): unknown {
	if (typeof value === 'string') return cleanText(value);
	if (Array.isArray(value)) return value.map(cleanDeep);
	if (typeof value !== 'object' || value === null) return value ?? null;
	return Object.fromEntries(
		Object.entries(value).map(([key, inner]) => [cleanText(key), cleanDeep(inner)]),
	);
}
