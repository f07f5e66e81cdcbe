// What a technician's own times are called, and what is said of those that cannot be used.

import { minutesSeconds } from '../base/duration.ts';
import {
	OWN_TIMES,
	type OwnTime,
	type OwnTimeName,
	type UnusableTime,
} from '../showfile/own-times.ts';
import type { InstrumentKind } from '../tuning/kind.ts';
import { kindWords } from './kinds.ts';

/** What a time is, for sentences that refuse something else. */
export const TIME_WORDS = 'a time in whole seconds such as 45s, 4m30s or 1:30';

type TouchUp = `touch-up.${InstrumentKind}`;

const NAMES: Readonly<Record<Exclude<OwnTimeName, TouchUp>, string>> = {
	'hand-over': 'hand-over',
	walk: 'walk, each way',
	capo: 'capo',
	wipe: 'wipe',
	'one-string-more': 'retuning one string',
	'two-strings-more': 'retuning two strings',
	'all-strings-more': 'all strings by one step',
	'other-tuning-more': 'any other retuning',
	restring: 'restring one string, settled',
	'restring-floating': 'restring one, floating bridge',
	'further-string': 'each further string',
};

const isTouchUp = (name: OwnTimeName): name is TouchUp => name.startsWith('touch-up.');

/** What it is the time of: `walk, each way`. */
export function workOfTime({ name }: Pick<OwnTime, 'name'>): string {
	if (!isTouchUp(name)) return NAMES[name];
	const kind = name.slice('touch-up.'.length) as InstrumentKind;
	return `touch-up, ${kind === 'other' ? 'any other instrument' : kindWords(kind)}`;
}

/** A time as it is shown: `0:45`; `as much` for one that is as long as the touch-up before it. */
export function timeText(seconds: number | null): string {
	return seconds === null ? 'as much' : minutesSeconds(seconds);
}

/** What a time stands beside: `capo`, `retuning one string, on top of the touch-up`. */
export function timeName(time: Pick<OwnTime, 'name' | 'isAdded'>): string {
	return time.isAdded ? `${workOfTime(time)}, on top of the touch-up` : workOfTime(time);
}

/** `capo: 0:06`; with null seconds the built-in time, and that it is that. */
export function ownTimeWords(name: string, seconds: number | null): string {
	const time = OWN_TIMES.find((one) => one.name === name);
	const value = timeText(seconds ?? time?.usual ?? null);
	return `${time ? timeName(time) : name}: ${value}${seconds === null ? ' as built in' : ''}`;
}

/** One whole sentence; the built-in time is used. */
export function unusableTimeWords({ name, ...rest }: UnusableTime): string {
	return 'kept' in rest
		? `Your time for ${name} cannot be used: ${JSON.stringify(rest.kept)} is not ${TIME_WORDS}. The built-in one is.`
		: `Your time for ${name} is for no work that is known.`;
}
