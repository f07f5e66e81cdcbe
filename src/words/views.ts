// The headings and marks of the views that are lists: rack, list, log, help, settings.

import { minutesSeconds } from '../base/duration.ts';
import { MARK_WORDS, STAGED } from './instrument-state.ts';

/** Names of views and columns. */
export const HEADINGS = {
	rack: 'RACK',
	state: 'state',
	tunedTo: 'tuning',
	where: 'where',
	nextUse: 'next in, work',
	drift: 'string: stage, about',
	list: 'LIST',
	showClock: 'show clock',
	gap: 'gap',
	handOvers: 'hand-overs',
	log: 'LOG',
	newestFirst: 'newest first',
	warnings: 'WARNINGS',
	warningsHow: 'disk warnings first',
	keys: 'KEYS',
	settings: 'SETTINGS',
	settingsHow: 'up and down, enter changes it',
} as const;

// Rack.

/** Who gets it next, and in how long: `Ash  2:33`; `Ash   now`. */
export const nextUse = (player: string, untilSeconds: number): string =>
	`${player} ${(untilSeconds < 0 ? 'now' : minutesSeconds(untilSeconds)).padStart(5)}`;
export const SPARE = 'spare';
export const driftCell = (string: number, cents: string): string => `${string}: ${cents}`;

/** What the marks mean, and what else is said in short, a line each; in more words where there is room. */
export function legendLines(stagedMark: string, isWide: boolean): readonly string[] {
	const marks = Object.entries({ ...MARK_WORDS, [stagedMark]: STAGED });
	return [
		marks.map(([mark, words]) => `${mark} ${words}`).join('  '),
		'PACK: put it on.  pack: already on.  LAST +2 more: see the log.  WATCH +2: see !',
		...(isWide
			? [
					'start within: until the latest start.  short: working time that is missing.  wait: sooner, it needs a recheck',
					'TO DO ≈: there may be a better plan',
				]
			: ['start within: until the latest start.  short: time missing.  ≈: maybe not best']),
	];
}

// The list of songs.

export const LIST = {
	now: 'ON',
	next: 'next',
	dropped: 'dropped',
	skipped: 'skipped',
	/** The song that a question is about: not yet there, not yet off the list. */
	askedHere: 'here?',
	askedDrop: 'drop?',
	empty: 'empty',
	none: 'none',
	noBackup: 'NO BACKUP',
	nothingPlanned: 'NOTHING PLANNED',
} as const;
/** How a song that was played ended. */
export const HOW_WORDS = {
	played: 'played',
	'cut-short': 'cut short',
	skipped: 'skipped',
} as const;
export const fileChanged = (clock: string): string => `  file changed ${clock}`;
export const intervalRow = (length: string): string => `interval ${length}`;
export const encoreTitle = (title: string): string => `${title} (encore)`;
export const tonightPart = (player: string, part: string): string => `${player} tonight ${part}`;
export const forNamed = (instrument: string): string => ` for ${instrument}`;
export const keepsRow = (instrument: string): string => `keeps ${instrument}`;

// What is out of sight.

export const moreAbove = (count: number): string => `${count} more above`;
export const moreBelow = (count: number): string => `${count} more below`;
export const OLDER_BELOW = 'older ones below';
export const moreLines = (count: number): string => `  ${count} more`;
export const helpPart = (first: number, last: number, of: number): string =>
	`  ${first} to ${last} of ${of}, up and down scroll; PgDn and PgUp step the SHOW`;

// Log.

export const onlyLinesWith = (words: string): string => `only lines with ${words}`;
export const UNDONE = 'undone: ';
