// What is said of many nights: what work really took, which strings broke, which gaps were tight.

import { minutesSeconds } from '../base/duration.ts';

export const withoutItsShow = (night: string): string =>
	`${night} is left out: it has lost its copy of the show.`;

// Times that were measured.

export const TIMES_TABLE = [
	'Work',
	'Measured',
	'Median',
	'9 of 10',
	'In the plan',
	'Your time',
] as const;
export const PIECES_TABLE = ['Day', 'Song', 'Instrument', 'Work', 'Planned', 'Real'] as const;
export const timesTitle = (nights: number): string =>
	`What work took in ${nights === 1 ? 'one night' : `${nights} nights`}, beside what the plan takes.`;
export const TOO_FEW = 'fewer than 5';
export const TIMES_MEAN = [
	'A hand-over counts from the end of the song to its key; several in one gap share that time equally, so one may show',
	'less than it took. Work counts from when the instrument came back until it was marked, where that was the first mark',
	'since; waiting in between is in it.',
] as const;
export const notInOneGo = (count: number): string =>
	`Left out: ${count} that took three times the plan or more, so not done in one go.`;
export const NOTHING_MEASURED =
	'Nothing could be measured: hand-overs and work need a key of their own (enter, t).';
export const USE_TIMES =
	'To plan with the medians: rackside times --use. With the longer ones: rackside times --use --careful.';
export const NOTHING_TO_USE = 'Nothing was measured often enough, so no time was changed.';
export const usedFrom = 'Used for shows read from now on (what a show file says comes first):';
export const NOW_BUILT_IN = ' (built in)';

// Night beside night.

export const nightsTitle = (count: number, from: string, to: string): string =>
	`${count === 1 ? 'One night' : `${count} nights`}, ${from === to ? from : `${from} to ${to}`}`;
export const NIGHTS_SECTIONS = {
	nights: 'Night beside night',
	strings: 'Strings broken',
	gaps: 'Tight gaps',
	hours: 'Hours on the strings',
	times: 'What work took',
} as const;
export const NIGHTS_TABLE = [
	'Day',
	'Show',
	'Songs',
	'Breaks',
	'To sound, median',
	'To sound, longest',
	'Hand-overs late',
	'Tight in the plan',
	'Tight in truth',
] as const;
export const STRINGS_TABLE = [
	'Instrument',
	'String',
	'Breaks',
	'Nights',
	'A night breaks one',
] as const;
export const GAPS_TABLE = [
	'Day',
	'Before',
	'Hand-overs',
	'Gap planned',
	'Gap',
	'Left in the plan',
	'Left',
	'Late',
] as const;
export const HOURS_TABLE = ['Instrument', 'In hands'] as const;
export const NONE = 'None.';
export const outOf = (some: number, all: number): string => `${some} of ${all}`;
export const NOT_SAID = 'not noted';
export const YES = 'yes';
/** Between which chances, 95 % sure. */
export const chanceWords = (low: number, high: number): string =>
	low === 0 ? `up to ${percent(high)}` : `${percent(low)} to ${percent(high)}`;
export const hoursText = (hours: number, isAtLeast: boolean): string =>
	`${isAtLeast ? 'at least ' : ''}${hours.toFixed(1)} h`;
export const CHANCE_MEANS =
	'The chance of a night is 95 % sure from so few nights; more nights narrow it.';
/** Seconds, or that nothing is known. */
export const secondsText = (seconds: number | null): string =>
	seconds === null ? '' : minutesSeconds(seconds);

function percent(share: number): string {
	return `${Math.round(share * 100)} %`;
}
