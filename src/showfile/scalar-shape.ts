// The single values of a show file, each from the text that was written: YAML's own guesses (a title
// 1.10 that becomes 1.1, a slot 01 that becomes 1, a `no` that becomes false) never come into it.

import './uncompiled-shapes.ts';
import * as z from 'zod/mini';

import { cleanText } from '../base/clean-text.ts';
import { parseSeconds } from '../base/duration.ts';
import { nearestName } from '../base/nearest-name.ts';
import { parseDayTime } from '../base/show-clock.ts';
import { type ChordShape, parseShape } from '../tuning/chord-shape.ts';
import { parseLength } from '../tuning/length-unit.ts';
import { parseDate } from './calendar-date.ts';
import { parseCapacity, parseMetres, parseMilliseconds, parseOhms } from './electric-measure.ts';
import type { BadValue } from './show-fault.ts';
import { parseGauge, parseScale } from './string-measure.ts';

/** A value read from its text; the complaint may depend on what was written. */
type Reader<Value> = {
	readonly read: (text: string) => Value | null;
	readonly complaint: BadValue | ((text: string) => BadValue);
	/** What an editor's JSON Schema allows, where it is more than text. */
	readonly editor?: Readonly<Record<string, unknown>>;
};

type Written<Value> = z.ZodMiniType<Value, string>;

const TEXT = z.string();

const TEXT_LONGEST = 1000;
/** Nothing of a set-up is larger: common practice, no source. */
const LONGEST_MEASURE = 50;
const ID_LONGEST = 40;
// The plain patterns come first because one with properties of characters takes a millisecond to be
// made, which most files then never need.
const PLAIN_ID = /^[A-Za-z0-9][\w.-]*$/;
const isId = (name: string): boolean => /^[\p{L}\p{N}][\p{L}\p{M}\p{N}_.-]*$/u.test(name);
const NUMBER = /^[+-]?\d{1,12}(?:\.\d{1,12})?$/;

function written<Value>({ read, complaint, editor }: Reader<Value>): Written<Value> {
	const reading = z.transform((text: string, context): Value => {
		const value = read(text);
		if (value !== null) return value;
		const said = typeof complaint === 'function' ? complaint(text) : complaint;
		context.issues.push({ code: 'custom', input: text, message: said.code, params: said });
		return z.NEVER;
	});
	const shape = z.pipe(TEXT, reading);
	return editor ? shape.register(z.globalRegistry, editor) : shape;
}

/** One line of words, cleaned, one to 1,000 characters. */
export const words: Written<string> = written({
	read: (text) => {
		const clean = text.length > TEXT_LONGEST ? '' : cleanText(text.trim());
		return clean === '' ? null : clean;
	},
	complaint: (text) => ({
		code: 'bad-text',
		isEmpty: text.trim() === '',
		most: TEXT_LONGEST,
	}),
	editor: { type: ['string', 'number', 'boolean'] },
});

/** A name that other lines refer to, in NFC, so that two ways to type an accent are one id. */
export const id: Written<string> = written({
	read: (text) => {
		const name = text.trim().normalize('NFC');
		return name.length <= ID_LONGEST && (PLAIN_ID.test(name) || isId(name)) ? name : null;
	},
	complaint: { code: 'bad-id', most: ID_LONGEST },
	editor: { type: ['string', 'number'] },
});

/** An id that stands elsewhere; whether it is one is asked where the ids are known. */
export const reference: Written<string> = written({
	read: (text) => {
		const name = text.trim().normalize('NFC');
		return name !== '' && name.length <= TEXT_LONGEST ? name : null;
	},
	complaint: { code: 'bad-id', most: null },
	editor: { type: ['string', 'number'] },
});

/** A length of time in seconds, at least `least`; at most 24 hours. */
export function duration(least: number, example: string): Written<number> {
	return written({
		read: (text) => {
			const seconds = parseSeconds(text);
			return seconds === null || seconds < least ? null : seconds;
		},
		complaint: { code: 'bad-duration', example, least },
		editor: { type: ['string', 'number'] },
	});
}

/** A plain finite number in a range, both ends included. */
export function number(range: {
	readonly from: number;
	readonly to: number;
	readonly isWhole?: boolean;
}): Written<number> {
	const { from, to, isWhole = false } = range;
	return written({
		read: (text) => {
			const value = NUMBER.test(text.trim()) ? Number(text) : Number.NaN;
			return value >= from && value <= to && (!isWhole || Number.isInteger(value))
				? value + 0
				: null;
		},
		complaint: { code: 'bad-number', from, to, isWhole },
		editor: { type: [isWhole ? 'integer' : 'number', 'string'], minimum: from, maximum: to },
	});
}

/** One of a few words. */
export function choice<const Word extends string>(known: readonly Word[]): Written<Word> {
	return written({
		read: (text) => known.find((word) => word === text.trim()) ?? null,
		complaint: (text) => ({
			code: 'unknown-word',
			known,
			near: nearestName(text.trim(), known),
		}),
		editor: { enum: [...known] },
	});
}

const YES: Readonly<Record<string, boolean>> = { true: true, yes: true, false: false, no: false };

/** `true`, `false`, `yes` or `no`. */
export const yesOrNo: Written<boolean> = written({
	read: (text) => (Object.hasOwn(YES, text.trim()) ? (YES[text.trim()] ?? null) : null),
	complaint: { code: 'bad-yes-no' },
	editor: { type: ['boolean', 'string'], enum: [true, false, 'yes', 'no'] },
});

/** `on` or `off`. */
export const onOrOff: Written<boolean> = written({
	read: (text) => ({ on: true, off: false })[text.trim()] ?? null,
	complaint: (text) => ({ code: 'bad-on-off', isYesOrNo: text.trim() in YES }),
	editor: { type: ['boolean', 'string'], enum: ['on', 'off', true, false] },
});

/** A day of the calendar, as it is written. */
export const date: Written<string> = written({
	read: parseDate,
	complaint: { code: 'bad-date' },
});

/** A time of day, in minutes after midnight. */
export const dayTime: Written<number> = written({
	read: parseDayTime,
	complaint: { code: 'bad-day-time' },
});

/** A string's gauge. */
export const gauge = written({
	read: parseGauge,
	complaint: { code: 'bad-gauge' },
	editor: { type: ['string', 'number'] },
});

/** A gauge as it is written, for counting what is in stock. */
export const gaugeLabel: Written<string> = written({
	read: (text) => (parseGauge(text) ? text.trim() : null),
	complaint: { code: 'bad-gauge' },
	editor: { type: ['string', 'number'] },
});

/** A scale length, in millimetres. */
export const scale: Written<number> = written({
	read: parseScale,
	complaint: { code: 'bad-scale' },
});

/** A measure of the bench, in millimetres: millimetres unless it says another unit. */
export const length: Written<number> = written({
	read: (text) => {
		const millimetres = parseLength(text);
		return millimetres !== null && millimetres <= LONGEST_MEASURE ? millimetres : null;
	},
	complaint: { code: 'bad-length', most: LONGEST_MEASURE },
	editor: { type: ['string', 'number'] },
});

/** Ohms of an input, an output, a loudspeaker. */
export const ohms: Written<number> = written({
	read: parseOhms,
	complaint: { code: 'bad-ohms' },
	editor: { type: ['string', 'number'] },
});

/** What a battery holds, in milliamp hours. */
export const capacity: Written<number> = written({
	read: parseCapacity,
	complaint: { code: 'bad-capacity' },
});

/** The length of a cord, how far a microphone stands off, in metres. */
export const metres: Written<number> = written({
	read: parseMetres,
	complaint: { code: 'bad-metres' },
	editor: { type: ['string', 'number'] },
});

/** How late sound comes, in milliseconds. */
export const milliseconds: Written<number> = written({
	read: parseMilliseconds,
	complaint: { code: 'bad-milliseconds' },
	editor: { type: ['string', 'number'] },
});

/** A chord shape, one fret a string or a course. */
export const chordShape: Written<ChordShape> = written({
	read: parseShape,
	complaint: { code: 'bad-shape' },
	editor: { type: ['string', 'number'] },
});

/** Characters that need shift on the keyboards that most laptops have. */
const SHIFTED = new Set('!@#$%^&*()_+{}|:"<>?~');

/** Keys that mean something else where a slot is asked for: `0` nothing or all, `-` nobody. */
const NO_SLOTS = new Set('0-=');

/** Letters, digits and signs that some keyboard has a key for; no emoji, no mark that stands on another. */
const PLAIN_KEY = /^[!-~]$/;
const isOnAKey = (key: string): boolean => /^[\p{L}\p{N}\p{P}\p{Sc}\p{Sk}\p{Sm}]$/u.test(key);

/** The key that names an instrument, lower case. */
export const slot: Written<string> = written({
	read: (text) => {
		const key = text.trim().normalize('NFC').toLowerCase();
		const isOnKey = PLAIN_KEY.test(key) || isOnAKey(key);
		return isOnKey && !NO_SLOTS.has(key) && !SHIFTED.has(key) ? key : null;
	},
	complaint: { code: 'bad-slot' },
	editor: { type: ['string', 'integer'] },
});

/** The letter that names a player, lower case. */
export const playerKey: Written<string> = written({
	read: (text) => (/^[a-z]$/i.test(text.trim()) ? text.trim().toLowerCase() : null),
	complaint: { code: 'bad-player-key' },
});
