// What may stand in a show file: every key, what it holds, which ones must be there. Whether an id
// leads anywhere is not asked here. The JSON Schema for editors is made from the same records.

import * as z from 'zod/mini';

import { INSTRUMENT_KINDS } from '../tuning/kind.ts';
import { capoFret, instrument, recheckAfter, unitMass, workTimes } from './instrument-shape.ts';
import { packBattery, pedal, rigPart, supply } from './rig-shape.ts';
import {
	choice,
	chordShape,
	date,
	dayTime,
	duration,
	gaugeLabel,
	id,
	number,
	onOrOff,
	playerKey,
	reference,
	words,
} from './scalar-shape.ts';
import { keyed, oneOrMore } from './strict-shape.ts';

/** The keys of a cue that name no player. */
export const CUE_KEYS = ['at', 'near', 'say', 'hand'] as const;

const show = keyed({
	title: z.optional(words),
	venue: z.optional(words),
	date: z.optional(date),
	start: z.optional(dayTime),
	curfew: z.optional(dayTime),
	// From the low pitch of old instruments to the high one of old organs: common practice, no source.
	reference: z.optional(number({ from: 380, to: 480 })),
	'recheck-after': recheckAfter,
	'recheck-new': z.optional(duration(1, '5m')),
	notes: z.optional(words),
});

const tech = keyed({ id, name: z.optional(words) });

const player = keyed({
	id,
	name: z.optional(words),
	plays: z.optional(words),
	tech: z.optional(reference),
	key: z.optional(playerKey),
});

// Further off than a quarter-tone is another note.
const cents = z.record(z.string(), number({ from: -50, to: 50 }));

const offsets = keyed({
	player: z.optional(reference),
	instrument: z.optional(reference),
	tuning: z.optional(words),
	cents,
});

const celsius = z.optional(number({ from: -40, to: 60 }));

const stage = keyed({
	temperature: celsius,
	soundcheck: celsius,
	humidity: z.optional(number({ from: 0, to: 100 })),
});

const needs = keyed({
	kind: choice(INSTRUMENT_KINDS),
	sounds: words,
	features: z.optional(oneOrMore(words)),
	prefer: z.optional(reference),
});

const part = z.union([
	reference,
	keyed({
		instrument: z.optional(reference),
		tuning: z.optional(words),
		capo: z.optional(capoFret),
		needs: z.optional(needs),
		leave: z.optional(words),
		pack: z.optional(reference),
	}),
]);

const pedalState = z.union([onOrOff, z.record(z.string(), words)]);

const boardState = z.union([choice(['off']), z.record(z.string(), pedalState)]);

const cue = z.catchall(
	z.object({
		at: words,
		near: z.optional(duration(0, '1:32')),
		say: z.optional(words),
		hand: z.optional(z.record(z.string(), part)),
	}),
	boardState,
);

const song = keyed({
	id,
	title: z.optional(words),
	length: z.optional(duration(1, '3:30')),
	tempo: z.optional(number({ from: 20, to: 400 })),
	hands: z.optional(z.record(z.string(), part)),
	shapes: z.optional(z.record(z.string(), oneOrMore(chordShape))),
	board: z.optional(z.record(z.string(), boardState)),
	order: z.optional(z.record(z.string(), oneOrMore(reference))),
	cues: z.optional(z.array(cue)),
	starts: z.optional(words),
	count: z.optional(number({ from: 1, to: 64, isWhole: true })),
	ends: z.optional(choice(['stop', 'ring', 'segue', 'talk'])),
	notes: z.optional(words),
});

const gap = z.optional(duration(0, '15s'));

const encoreItem = z.union([reference, keyed({ song: reference, gap })]);

const setItem = z.union([
	reference,
	keyed({
		song: z.optional(reference),
		gap,
		interval: z.optional(duration(1, '20m')),
		encore: z.optional(z.array(encoreItem)),
	}),
]);

const pack = keyed({
	id,
	name: z.optional(words),
	channel: z.optional(words),
	battery: z.optional(packBattery),
});

const timesByKind = Object.fromEntries(
	INSTRUMENT_KINDS.map((kind) => [kind, z.optional(workTimes)]),
);

/** A show with everything that it includes, joined: the whole file format. */
export const showFileShape = keyed({
	format: z.optional(words),
	include: z.optional(oneOrMore(words)),
	show: z.optional(show),
	techs: z.optional(z.array(tech)),
	players: z.optional(z.array(player)),
	instruments: z.optional(z.array(instrument)),
	songs: z.optional(z.array(song)),
	set: z.optional(z.array(setItem)),
	boards: z.optional(z.record(z.string(), z.array(pedal))),
	rigs: z.optional(z.record(z.string(), z.array(rigPart))),
	supplies: z.optional(z.array(supply)),
	packs: z.optional(z.array(pack)),
	times: z.optional(keyed({ all: z.optional(workTimes), ...timesByKind })),
	stock: z.optional(
		z.array(keyed({ gauge: gaugeLabel, count: number({ from: 0, to: 100_000, isWhole: true }) })),
	),
	gauges: z.optional(z.array(gaugeLabel)),
	'unit-mass': z.optional(unitMass),
	offsets: z.optional(z.array(offsets)),
	stage: z.optional(stage),
	abbreviations: z.optional(z.record(z.string(), words)),
});

/** The keys that stand at a show file's top. */
export const SECTIONS = Object.keys(showFileShape.shape) as readonly Section[];

export type Section = keyof typeof showFileShape.shape;

/** A show file's words turned into values; its ids are not resolved. */
export type ShapedShow = z.output<typeof showFileShape>;

export type ShapedSong = z.output<typeof song>;
export type ShapedPart = z.output<typeof part>;
export type ShapedCue = z.output<typeof cue>;
export type ShapedBoard = z.output<typeof boardState>;
export type ShapedSetItem = z.output<typeof setItem>;
