// The picture of a night along its clock: names of its lanes, what its marks are, and the sentence of each.

import { minutesSeconds } from '../base/duration.ts';
import { inTuning, SONG_STATES } from './report.ts';

export const TIMELINE = {
	title: 'The night along the clock',
	songs: 'Songs',
	load: 'Work waiting',
	asTable: 'The same as a table',
	skip: 'Skip the picture, go to its table',
	gap: 'gap between songs',
	tabHint: 'Point at a mark, tap it or reach it with the tab key, and it says what it is.',
	columns: ['Lane', 'What'],
} as const;

/** What a stretch or a moment of a lane is, as the key of the picture has it. */
export const MARK_WORDS = {
	song: 'a song',
	'cut-short': 'a song that was cut short or skipped',
	hands: 'in hands',
	ready: 'ready',
	recheck: 'RECHECK: ready, but too long ago',
	'not-ready': 'not ready',
	work: 'on the bench',
	out: 'out of use',
	many: 'many changes, too short to draw',
	break: 'string break',
	incident: 'other incident',
	cue: 'missed cue',
} as const;

/** The same where there is little room. */
export const MARK_SHORT = {
	...MARK_WORDS,
	song: 'song or who has what',
	'cut-short': 'cut short or skipped',
	recheck: 'RECHECK',
	many: 'many changes',
} as const;

export type MarkWhat = keyof typeof MARK_WORDS;

const fromTo = (from: string, to: string): string => (from === to ? from : `${from} to ${to}`);

/** `20:14 to 20:18: song 3 Lantern, played, 3:52` */
export function songSentence(song: {
	readonly from: string;
	readonly to: string;
	readonly position: number | null;
	readonly title: string;
	readonly state: keyof typeof SONG_STATES;
	readonly seconds: number;
}): string {
	const { from, to, position, title, state, seconds } = song;
	const name = position === null ? title : `song ${position} ${title}`;
	return `${fromTo(from, to)}: ${name}, ${SONG_STATES[state]}, ${minutesSeconds(seconds)}`;
}

/** `20:14 to 20:30: Ash has 4 Anchor in drop D, capo 2` */
export function holdsSentence(hold: {
	readonly from: string;
	readonly to: string;
	readonly player: string;
	readonly instrument: string;
	readonly tuning: string | null;
	readonly capo: number;
}): string {
	const { from, to, player, instrument, tuning, capo } = hold;
	return `${fromTo(from, to)}: ${player} has ${inTuning(instrument, tuning, capo)}`;
}

/** Where an instrument is that nobody has. */
export const PLACE_WORDS = {
	rack: 'on the rack',
	stage: 'at its place on stage',
	hands: 'in hands',
	bench: 'on the bench',
	out: 'out of use',
} as const;

/** How it stands there. */
export const READINESS_WORDS = {
	ready: 'ready',
	stale: 'RECHECK',
	'not-ready': 'not ready',
} as const;

/** `20:14 to 20:18: 4 Anchor on the rack, RECHECK, in drop D, 1 string down` */
export function standsSentence(stand: {
	readonly from: string;
	readonly to: string;
	readonly instrument: string;
	readonly place: keyof typeof PLACE_WORDS;
	readonly readiness: keyof typeof READINESS_WORDS | null;
	readonly tuning: string;
	readonly capo: number;
	readonly stringsDown: number;
	readonly hasFault: boolean;
}): string {
	const { from, to, instrument, place, readiness, tuning, capo, stringsDown, hasFault } = stand;
	const parts = [
		PLACE_WORDS[place],
		...(readiness === null || place === 'out' ? [] : [READINESS_WORDS[readiness]]),
		`in ${tuning}${capo > 0 ? ` with capo ${capo}` : ''}`,
		...(stringsDown === 0
			? []
			: [`${stringsDown} ${stringsDown === 1 ? 'string' : 'strings'} down`]),
		...(hasFault ? ['faulty'] : []),
	];
	return `${fromTo(from, to)}: ${instrument} ${parts.join(', ')}`;
}

/** Changes that are too short to be drawn or listed one by one. */
export const manySentence = (from: string, to: string, count: number): string =>
	`${fromTo(from, to)}: ${count} changes`;

/** `20:14 to 20:18: 2 instruments wait for work` */
export function loadSentence(from: string, to: string, waiting: number): string {
	const what =
		waiting === 0
			? 'nothing waits for work'
			: `${waiting} ${waiting === 1 ? 'instrument waits' : 'instruments wait'} for work`;
	return `${fromTo(from, to)}: ${what}`;
}

export const curfewSentence = (at: string): string => `curfew ${at}`;

/** `missed cue solo` */
export const missedCueWords = (cues: readonly string[]): string =>
	`missed ${cues.length === 1 ? 'cue' : 'cues'} ${cues.join(', ')}`;
