// A show as a night's journal keeps it: a form of its own with a version, checked when it is read, so that
// whatever the program comes to call a show, it still opens the nights of those before it.

import * as z from 'zod/mini';
import { type InstrumentKind, KINDS } from '../tuning/kind.ts';
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
import { rigForms } from './rig-record.ts';
import type { Cue, Instrument, Pack, SetUp, Show, Song } from './show.ts';

/** The version that is written. Version 1 was the show itself, without any number. */
const VERSION = 3;

export type ShowRecord = {
	readonly v: typeof VERSION;
	readonly show: z.input<ReturnType<typeof makeForms>['SHOW']>;
};

/**
 * What is kept of a show.
 *
 * @example
 * keptShow(showRecord(show)) // => show
 */
export function showRecord(show: Show): ShowRecord {
	// Only what the form has: nothing that a show merely happens to hold gets onto a disk.
	return { v: VERSION, show: showForms().SHOW.parse(show) };
}

/** A night's own copy of its show, of any version; null when it has none, or one that is no show for this program. */
export function keptShow(copy: unknown): Show | null {
	const kept = upgraded(copy);
	return kept === null ? null : (showForms().SHOW.safeParse(kept).data ?? null);
}

/** For each version before the one that is written, what makes a copy of it one of the version after. */
const STEPS: { readonly [version: number]: (copy: object) => object } = {
	1: (show) => ({ v: 2, show }),
	// Offsets were called by a maker's word.
	2: (copy) => {
		if (!('show' in copy) || typeof copy.show !== 'object' || copy.show === null) return copy;
		const { sweeten: offsets, ...show } = copy.show as Readonly<Record<string, unknown>>;
		return { ...copy, v: 3, show: { ...show, ...(offsets === undefined ? {} : { offsets }) } };
	},
};

function upgraded(copy: unknown): unknown {
	if (typeof copy !== 'object' || copy === null) return null;
	let now: object = copy;
	for (let version = versionOf(now); version < VERSION; version += 1) {
		now = STEPS[version]?.(now) ?? now;
	}
	return versionOf(now) === VERSION && 'show' in now ? now.show : null;
}

function versionOf(copy: object): number {
	return 'v' in copy && typeof copy.v === 'number' ? copy.v : 1;
}

/** What nights had before it was known. */
const since = z._default;

/** Has every field, those too that may be left out: one that is new is not forgotten here. */
type Whole<Of> = { readonly [Field in keyof Of]-?: z.ZodMiniType };

/** The forms of a show and its pieces; made when a night is first written or read, which most commands never do. */
export function showForms(): ReturnType<typeof makeForms> {
	made ??= makeForms();
	return made;
}

let made: ReturnType<typeof makeForms> | undefined;

function makeForms() {
	const { OUTPUT, PACK_BATTERY, PEDAL_TRAITS, POWER, RIGS, SUPPLIES } = rigForms();
	const TUNING = z.object({ name: text, notes: list(text) });
	const TUNING_OR_NULL = z.nullable(TUNING);
	const textSince = since(textOrNull, null);
	const numberSince = since(numberOrNull, null);
	const KIND = z.enum(Object.keys(KINDS) as [InstrumentKind, ...InstrumentKind[]]);
	const LEAVE_AND_PACK = { leave: textSince, pack: textSince };

	const PART = z.discriminatedUnion('kind', [
		z.object({
			kind: z.literal('named'),
			instrument: text,
			tuning: TUNING_OR_NULL,
			capo: number,
			...LEAVE_AND_PACK,
		}),
		z.object({
			kind: z.literal('needs'),
			instrumentKind: KIND,
			sounds: TUNING,
			features: since(list(text), []),
			prefer: textSince,
			...LEAVE_AND_PACK,
		}),
		z.object({ kind: z.literal('none') }),
	]);

	const BOARD = byName(z.object({ on: boolean, settings: later(byName(text)) }));

	const SET_UP = z.object({
		actionFirst: later(list(number)),
		actionLast: later(list(number)),
		relief: later(number),
		pickup: later(list(number)),
		nut: later(list(number)),
		saddleScrew: later(number),
	} satisfies Whole<SetUp>);

	const INSTRUMENT = z.object({
		id: text,
		name: text,
		slot: textOrNull,
		kind: KIND,
		for: z.nullable(list(text)),
		tuning: TUNING,
		scaleMillimetres: numberSince,
		strings: since(list(z.object({ millimetres: number, isWound: boolean })), []),
		bridge: z.enum(['fixed', 'floating']),
		features: since(list(text), []),
		pack: textSince,
		case: textSince,
		spare: boolean,
		strung: since(z.object({ on: textOrNull, hours: numberOrNull }), { on: null, hours: null }),
		times: z.object({
			touchUp: number,
			oneString: number,
			twoStrings: number,
			allStrings: number,
			otherTuning: number,
			wipe: number,
			capo: number,
			walk: number,
			restring: number,
			furtherString: number,
			handOver: number,
		}),
		givenTimes: later(byName(number)),
		leave: textSince,
		notes: textSince,
		pickups: textSince,
		unitMass: later(byName(number)),
		setUp: later(SET_UP),
		recheckAfterSeconds: later(number),
		instead: later(list(z.object({ instrument: text, tuning: TUNING_OR_NULL, capo: number }))),
		gear: later(text),
		serial: later(text),
		owner: later(text),
		hiredFrom: later(text),
		output: later(OUTPUT),
		power: later(POWER),
	} satisfies Whole<Instrument>);

	const CUE = z.object({
		at: text,
		nearSeconds: numberSince,
		say: textSince,
		hand: since(byName(PART), {}),
		boards: since(byName(BOARD), {}),
	} satisfies Whole<Cue>);

	const SONG = z.object({
		id: text,
		title: text,
		lengthSeconds: numberOrNull,
		tempo: numberSince,
		parts: byName(PART),
		board: since(byName(BOARD), {}),
		cues: since(list(CUE), []),
		starts: textSince,
		count: numberSince,
		ends: since(z.enum(['stop', 'ring', 'segue', 'talk']), 'stop'),
		notes: textSince,
		shapes: later(byName(list(list(numberOrNull)))),
		order: later(byName(list(text))),
	} satisfies Whole<Song>);

	const PACK = z.object({
		id: text,
		name: textOrNull,
		channel: textOrNull,
		battery: later(PACK_BATTERY),
	} satisfies Whole<Pack>);

	const SET_ITEM = z.discriminatedUnion('kind', [
		z.object({
			kind: z.literal('song'),
			song: text,
			gapSeconds: numberOrNull,
			isEncore: since(boolean, false),
		}),
		z.object({ kind: z.literal('interval'), seconds: number }),
	]);

	const SHOW = z.object({
		title: text,
		venue: textSince,
		date: textSince,
		startMinutes: numberSince,
		curfewMinutes: numberSince,
		referenceHertz: since(number, 440),
		staleAfterSeconds: since(number, 900),
		staleNewSeconds: since(number, 300),
		techs: since(list(z.object({ id: text, name: text })), []),
		players: list(
			z.object({
				id: text,
				name: text,
				plays: textSince,
				tech: textSince,
				key: text,
			}),
		),
		instruments: list(INSTRUMENT),
		songs: list(SONG),
		set: list(SET_ITEM),
		boards: since(
			byName(list(z.object({ id: text, name: text, extra: byName(z.unknown()), ...PEDAL_TRAITS }))),
			{},
		),
		packs: since(list(PACK), []),
		times: since(byName(byName(number)), {}),
		stock: since(list(z.object({ gauge: text, count: number })), []),
		abbreviations: since(byName(text), {}),
		gauges: later(list(text)),
		unitMass: later(byName(number)),
		offsets: later(
			list(
				z.object({
					player: later(text),
					instrument: later(text),
					tuning: later(text),
					cents: byName(number),
				}),
			),
		),
		stage: later(
			z.object({ temperature: numberOrNull, soundcheck: numberOrNull, humidity: numberOrNull }),
		),
		notes: later(text),
		ownTimes: later(byName(number)),
		rigs: later(RIGS),
		supplies: later(SUPPLIES),
	} satisfies Whole<Show>);

	return { SHOW, PART, TUNING };
}
