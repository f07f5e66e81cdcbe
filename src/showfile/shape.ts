// What may stand in a show file: every key, what it holds, which ones must be there. Whether an id
// leads anywhere is not asked here. The JSON Schema for editors is made from the same records.

import * as z from 'zod';

import { INSTRUMENT_KINDS } from '../tuning/kind.ts';
import {
	choice,
	date,
	dayTime,
	duration,
	gauge,
	gaugeLabel,
	id,
	number,
	onOrOff,
	playerKey,
	reference,
	scale,
	slot,
	words,
	yesOrNo,
} from './scalar-shape.ts';

/** The only format there is; a file says it so that a later one can be told from it. */
export const FORMAT = 'rackside/1';

/** The keys of a cue that name no player. */
export const CUE_KEYS = ['at', 'near', 'say', 'hand'] as const;

/** A map with these keys and no others; the complaint about another carries the known ones. */
function keyed<Shape extends z.core.$ZodLooseShape>(shape: Shape) {
	const known = Object.keys(shape).join(' ');
	return z.strictObject(shape, {
		error: (issue) => (issue.code === 'unrecognized_keys' ? known : undefined),
	});
}

/** A list, or a single item in its place. */
function oneOrMore<Value>(item: z.ZodType<Value, string>) {
	return z.union([z.array(item), item.transform((one) => [one])]);
}

const workSeconds = duration(0, '45s or 4m30s').optional();

const workTimes = keyed({
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

const show = keyed({
	title: words.optional(),
	venue: words.optional(),
	date: date.optional(),
	start: dayTime.optional(),
	curfew: dayTime.optional(),
	// From the low pitch of old instruments to the high one of old organs: common practice, no source.
	reference: number({ from: 380, to: 480 }).optional(),
	'stale-after': duration(1, '15m').optional(),
	'stale-new': duration(1, '5m').optional(),
});

const tech = keyed({ id, name: words.optional() });

const player = keyed({
	id,
	name: words.optional(),
	plays: words.optional(),
	tech: reference.optional(),
	key: playerKey.optional(),
});

const instrument = keyed({
	id,
	name: words.optional(),
	slot: slot.optional(),
	kind: choice(INSTRUMENT_KINDS),
	for: oneOrMore(reference).optional(),
	tuning: words,
	scale: scale.optional(),
	strings: z.array(gauge).optional(),
	bridge: choice(['fixed', 'floating']).optional(),
	features: oneOrMore(words).optional(),
	pickups: words.optional(),
	pack: reference.optional(),
	case: words.optional(),
	spare: yesOrNo.optional(),
	strung: keyed({
		on: date.optional(),
		hours: number({ from: 0, to: 100_000 }).optional(),
	}).optional(),
	times: workTimes.optional(),
	leave: words.optional(),
	notes: words.optional(),
});

const needs = keyed({
	kind: choice(INSTRUMENT_KINDS),
	sounds: words,
	features: oneOrMore(words).optional(),
	prefer: reference.optional(),
});

const part = z.union([
	reference,
	keyed({
		instrument: reference.optional(),
		tuning: words.optional(),
		capo: number({ from: 0, to: 12, isWhole: true }).optional(),
		needs: needs.optional(),
		leave: words.optional(),
		pack: reference.optional(),
	}),
]);

const pedalState = z.union([onOrOff, z.record(z.string(), words)]);

const boardState = z.union([choice(['off']), z.record(z.string(), pedalState)]);

const cue = z
	.object({
		at: words,
		near: duration(0, '1:32').optional(),
		say: words.optional(),
		hand: z.record(z.string(), part).optional(),
	})
	.catchall(boardState);

const song = keyed({
	id,
	title: words.optional(),
	length: duration(1, '3:30').optional(),
	tempo: number({ from: 20, to: 400 }).optional(),
	parts: z.record(z.string(), part).optional(),
	board: z.record(z.string(), boardState).optional(),
	cues: z.array(cue).optional(),
	starts: words.optional(),
	count: number({ from: 1, to: 64, isWhole: true }).optional(),
	ends: choice(['stop', 'ring', 'segue', 'talk']).optional(),
	notes: words.optional(),
});

const gap = duration(0, '15s').optional();

const encoreItem = z.union([reference, keyed({ song: reference, gap })]);

const setItem = z.union([
	reference,
	keyed({
		song: reference.optional(),
		gap,
		interval: duration(1, '20m').optional(),
		encore: z.array(encoreItem).optional(),
	}),
]);

const pedal = z.object({ id, name: words.optional() }).catchall(z.unknown());

const timesByKind = Object.fromEntries(
	INSTRUMENT_KINDS.map((kind) => [kind, workTimes.optional()]),
);

/** A show with everything that it includes, joined: the whole file format. */
export const showFileShape = keyed({
	format: words.optional(),
	include: oneOrMore(words).optional(),
	show: show.optional(),
	techs: z.array(tech).optional(),
	players: z.array(player).optional(),
	instruments: z.array(instrument).optional(),
	songs: z.array(song).optional(),
	set: z.array(setItem).optional(),
	boards: z.record(z.string(), z.array(pedal)).optional(),
	packs: z.array(keyed({ id, name: words.optional(), channel: words.optional() })).optional(),
	times: keyed({ all: workTimes.optional(), ...timesByKind }).optional(),
	stock: z
		.array(keyed({ gauge: gaugeLabel, count: number({ from: 0, to: 100_000, isWhole: true }) }))
		.optional(),
	abbreviations: z.record(z.string(), words).optional(),
});

/** The keys that stand at a show file's top. */
export const SECTIONS = Object.keys(showFileShape.shape) as readonly Section[];

export type Section = keyof typeof showFileShape.shape;

/** A show file's words turned into values; its ids are not resolved. */
export type ShapedShow = z.output<typeof showFileShape>;

export type ShapedInstrument = z.output<typeof instrument>;
export type ShapedSong = z.output<typeof song>;
export type ShapedPart = z.output<typeof part>;
export type ShapedCue = z.output<typeof cue>;
export type ShapedBoard = z.output<typeof boardState>;
export type ShapedSetItem = z.output<typeof setItem>;
export type ShapedTimes = z.output<typeof workTimes>;
