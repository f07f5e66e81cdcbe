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
import { optional } from './shared-shape.ts';
import { keyed, oneOrMore } from './strict-shape.ts';

/** The keys of a cue that name no player. */
export const CUE_KEYS = ['at', 'near', 'say', 'hand'] as const;

const show = keyed({
	title: optional(words),
	venue: optional(words),
	date: optional(date),
	start: optional(dayTime),
	curfew: optional(dayTime),
	// From the low pitch of old instruments to the high one of old organs: common practice, no source.
	reference: optional(number({ from: 380, to: 480 })),
	'recheck-after': recheckAfter,
	'recheck-new': optional(duration(1, '5m')),
	notes: optional(words),
});

const tech = keyed({ id, name: optional(words) });

const player = keyed({
	id,
	name: optional(words),
	plays: optional(words),
	tech: optional(reference),
	key: optional(playerKey),
});

// Further off than a quarter-tone is another note.
const cents = z.record(z.string(), number({ from: -50, to: 50 }));

const offsets = keyed({
	player: optional(reference),
	instrument: optional(reference),
	tuning: optional(words),
	cents,
});

const celsius = optional(number({ from: -40, to: 60 }));

const stage = keyed({
	temperature: celsius,
	soundcheck: celsius,
	humidity: optional(number({ from: 0, to: 100 })),
});

const needs = keyed({
	kind: choice(INSTRUMENT_KINDS),
	sounds: words,
	features: optional(oneOrMore(words)),
	prefer: optional(reference),
});

const part = z.union([
	reference,
	keyed({
		instrument: optional(reference),
		tuning: optional(words),
		capo: optional(capoFret),
		needs: optional(needs),
		leave: optional(words),
		pack: optional(reference),
	}),
]);

const pedalState = z.union([onOrOff, z.record(z.string(), words)]);

const boardState = z.union([choice(['off']), z.record(z.string(), pedalState)]);

const cue = z.catchall(
	z.object({
		at: words,
		near: optional(duration(0, '1:32')),
		say: optional(words),
		hand: optional(z.record(z.string(), part)),
	}),
	boardState,
);

const song = keyed({
	id,
	title: optional(words),
	length: optional(duration(1, '3:30')),
	tempo: optional(number({ from: 20, to: 400 })),
	hands: optional(z.record(z.string(), part)),
	shapes: optional(z.record(z.string(), oneOrMore(chordShape))),
	board: optional(z.record(z.string(), boardState)),
	order: optional(z.record(z.string(), oneOrMore(reference))),
	cues: optional(z.array(cue)),
	starts: optional(words),
	count: optional(number({ from: 1, to: 64, isWhole: true })),
	ends: optional(choice(['stop', 'ring', 'segue', 'talk'])),
	notes: optional(words),
});

const gap = optional(duration(0, '15s'));

const encoreItem = z.union([reference, keyed({ song: reference, gap })]);

const setItem = z.union([
	reference,
	keyed({
		song: optional(reference),
		gap,
		interval: optional(duration(1, '20m')),
		encore: optional(z.array(encoreItem)),
	}),
]);

const pack = keyed({
	id,
	name: optional(words),
	channel: optional(words),
	battery: optional(packBattery),
});

const timesByKind = Object.fromEntries(INSTRUMENT_KINDS.map((kind) => [kind, optional(workTimes)]));

/** A show with everything that it includes, joined: the whole file format. */
export const showFileShape = keyed({
	format: optional(words),
	include: optional(oneOrMore(words)),
	show: optional(show),
	techs: optional(z.array(tech)),
	players: optional(z.array(player)),
	instruments: optional(z.array(instrument)),
	songs: optional(z.array(song)),
	set: optional(z.array(setItem)),
	boards: optional(z.record(z.string(), z.array(pedal))),
	rigs: optional(z.record(z.string(), z.array(rigPart))),
	supplies: optional(z.array(supply)),
	packs: optional(z.array(pack)),
	times: optional(keyed({ all: optional(workTimes), ...timesByKind })),
	stock: optional(
		z.array(keyed({ gauge: gaugeLabel, count: number({ from: 0, to: 100_000, isWhole: true }) })),
	),
	gauges: optional(z.array(gaugeLabel)),
	'unit-mass': optional(unitMass),
	offsets: optional(z.array(offsets)),
	stage: optional(stage),
	abbreviations: optional(z.record(z.string(), words)),
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
