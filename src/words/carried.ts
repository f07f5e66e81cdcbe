// What goes from one night into the next, a sentence each, with where it comes from.

import { cleanText } from '../base/clean-text.ts';
import { minutesSeconds } from '../base/duration.ts';
import { OWN_TIMES } from '../showfile/own-times.ts';
import { workOfTime } from './own-times.ts';

/** When something came to be so: during or after a song, and the time of day. */
export type Since = {
	/** Null before the first song. */
	readonly song: string | null;
	readonly isOn: boolean;
	/** `21:40` */
	readonly clock: string;
};

function sinceWords({ song, isOn, clock }: Since): string {
	if (song === null) return `before the first song, ${clock}`;
	return `${isOn ? 'during' : 'after'} ${song}, ${clock}`;
}

export const carriedTuning = (instrument: string, tuning: string, since: Since): string =>
	`${instrument} in ${tuning}: as it hung ${sinceWords(since)}`;
export const keptTuning = (
	instrument: string,
	tunings: { readonly now: string; readonly own: string },
	since: Since,
): string =>
	`${instrument} in ${tunings.now}: as it hung ${sinceWords(since)}; the file keeps ${tunings.own}, which its strings are for, so retune it first`;
export const carriedCapo = (instrument: string, fret: number, since: Since): string =>
	`${instrument} with a capo on ${fret}: as it hung ${sinceWords(since)}`;
export const carriedStrings = (instrument: string, since: Since): string =>
	`${instrument} with new strings: put on ${sinceWords(since)}`;
export const carriedBroken = (
	instrument: string,
	strings: readonly (number | null)[],
	since: Since,
): string => `${instrument}: ${brokenWords(strings)}, since ${clockFirst(since)}`;
export const carriedFault = (instrument: string, fault: string, since: Since): string =>
	`${instrument}: ${fault}, since ${clockFirst(since)}`;
export const carriedOut = (instrument: string, since: Since): string =>
	`${instrument}: out, since ${clockFirst(since)}`;
export const carriedPack = (pack: string, since: Since): string =>
	`Pack ${pack}: suspect, since ${clockFirst(since)}`;
export const carriedPedal = (player: string, pedal: string, since: Since): string =>
	`${player}'s ${pedal}: does not switch, since ${clockFirst(since)}`;

function clockFirst({ song, isOn, clock }: Since): string {
	if (song === null) return `${clock}, before the first song`;
	return `${clock}, ${isOn ? 'during' : 'after'} ${song}`;
}

export function brokenWords(strings: readonly (number | null)[]): string {
	return strings
		.map((one) => (one === null ? 'a string broken, not noted which' : `string ${one} broken`))
		.join(', ');
}

/** Instruments with the hours on their strings, those of the show file before them. */
export const carriedHours = (
	all: readonly { readonly instrument: string; readonly hours: number }[],
): string =>
	`Hours on strings, with this night's hours in hands: ${all.map(({ instrument, hours }) => `${instrument} ${hours}`).join(', ')}`;
export const carriedBatteries = (
	all: readonly { readonly what: string; readonly hours: number }[],
): string =>
	`Hours used of batteries, with this night's: ${all.map(({ what, hours }) => `${what} ${hours}`).join(', ')}`;
export const ORDER_AS_PLAYED = 'The order: as it was played';
export const orderAdded = (songs: readonly string[]): string =>
	`In the list, since it was added: ${songs.join(', ')}`;
export const orderDropped = (songs: readonly string[]): string =>
	`Not in the list, since it was dropped: ${songs.join(', ')}`;
export const orderUnplayed = (songs: readonly string[]): string =>
	`Not played, and in the list where it stood: ${songs.join(', ')}`;
export const keptTimes = (times: Readonly<Record<string, number>>): string =>
	`Your own times, from the settings as before: ${Object.entries(times).map(timeWords).join('; ')}`;

function timeWords([name, seconds]: readonly [string, number]): string {
	const known = OWN_TIMES.find((one) => one.name === name);
	return `${known ? workOfTime(known) : cleanText(name)} ${minutesSeconds(seconds)}`;
}

// What is to be done before the next show, since a file cannot say it and a night begins without it.

export const takeCapoOff = (instrument: string): string => `take the capo off ${instrument}`;
export const retuneTo = (instrument: string, tuning: string): string =>
	`retune ${instrument} to ${tuning}`;
export const restringIt = (instrument: string, strings: readonly (number | null)[]): string =>
	`restring ${instrument} (${brokenWords(strings)}), or mark it out`;
export const seeToFault = (instrument: string, fault: string): string =>
	`see to ${instrument} (${fault}), or mark it out`;
export const seeToOut = (instrument: string): string => `see to ${instrument}, or mark it out`;
export const checkPack = (pack: string): string =>
	`check battery and channel of pack ${pack}, or mark it suspect`;
export const seeToPedal = (player: string, pedal: string): string =>
	`see to ${player}'s ${pedal}, which does not switch`;

/** One line for all of it. */
export const beforeTheDoors = (toDo: readonly string[]): string =>
	`Before the doors: ${toDo.join('; ')}.`;

/** What the file says in an instrument's notes: it stays true, since it says of when. */
export const noteOf = (date: string, words: string): string => `${date}: ${words}`;

/** At the top of the file. */
export const madeFrom = (night: string): string =>
	`From the night ${night}: the same gear and songs, and what changed.`;

// On the terminal.

export const CARRIED_TITLE = 'Carried over:';
export const NOTHING_CARRIED = 'Nothing had changed.';
