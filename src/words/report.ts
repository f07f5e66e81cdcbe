// The post-show report: its sections, verdict and tables, and what is to be done before the next show.

import { minutesSeconds } from '../base/duration.ts';

/** Titles of the sections. */
export const SECTIONS = {
	incidents: 'Incidents',
	wrong: 'Wrong instrument in hands',
	backups: 'Played on a backup',
	other: 'Not played as the show file says',
	songs: 'Songs',
	handOvers: 'Hand-overs',
	tomorrow: 'For tomorrow',
	buy: 'To buy, by this night alone',
	tell: 'Who must know',
	carry: 'How the next show finds it',
	strings: 'Strings broken',
	lost: 'Time lost',
	work: 'Work done',
	cues: 'Cues not reached',
	packs: 'Packs',
	memos: 'Memos',
	boards: 'Boards corrected',
	away: 'While the program was off',
	record: 'The file of this night',
	before: 'Before the show',
	cautions: 'Cautions',
} as const;

/** How a song went. */
export const SONG_STATES = {
	played: 'played',
	'cut-short': 'cut short',
	skipped: 'skipped',
	dropped: 'dropped',
	on: 'still on when the night was left',
	'to-come': 'not reached',
} as const;

export const SONG_TABLE = [
	'#',
	'Song',
	'State',
	'Began',
	'Ended',
	'Length',
	'Planned',
	'Gap before',
	'Note',
] as const;
/** Further columns of the songs: for a player, and for whoever asks whether it ran to time. */
export const PLAYED_ON = 'Played on';
export const PLANNED_AT = 'Planned at';
export const HAND_OVER_TABLE = [
	'When',
	'For',
	'Player',
	'Instrument',
	'Tuning',
	'Capo',
	'Ready',
	'How',
	'Took',
] as const;
export const WORK_TABLE = [
	'When',
	'Done',
	'Instrument',
	'Work',
	'Took at most',
	'Handed next for',
	'Handed after',
	'Late',
] as const;
/** How a hand-over came about, by the record's own word. */
export const HOW_GIVEN = { plan: 'planned', 'stand-in': 'backup', exchange: 'swap' } as const;

export const REHEARSAL = ' (rehearsal)';
export const ENCORE = ' (encore)';
export const EMPTY_HANDS = 'hands empty';
export const NOT_DESCRIBED = 'not described';

/** `Night 2026-03-14: began 20:01, ended 21:58.` */
export function nightLine(night: {
	readonly id: string;
	readonly began: string | null;
	readonly ended: string | null;
	readonly isOver: boolean;
}): string {
	const { id, began, ended, isOver } = night;
	const times = [
		began === null ? 'no song began' : `began ${began}`,
		...(ended === null ? [] : [`ended ${ended}`]),
		...(isOver ? [] : ['still open']),
	];
	return `Night ${id}: ${times.join(', ')}.`;
}

/** Whether all went well, first of all. */
export const VERDICTS = {
	clean: 'Clean show: nothing went wrong.',
	look: 'There is something to look at below.',
	nothingPlayed: 'The show was closed, and no song was played.',
	openSoFar: 'The night is still open. Nothing has gone wrong so far.',
	openNothing: 'The night is still open. No song has been played yet.',
} as const;

/** `20:21: what happened`. */
export const timedLine = (clock: string, words: string): string => `${clock}: ${words}`;
export const lasted = (seconds: number): string => `for ${minutesSeconds(seconds)}`;
export const downFor = (seconds: number): string => `down ${lasted(seconds)}`;
export const TO_THE_END = 'to the end';
export const stringLabel = (string: number): string => `string ${string}`;
export const backupLabel = (instrument: string): string => `backup ${instrument}`;
export const hadWords = (player: string, held: string): string => `${player} had ${held}`;
export const wantsWords = (song: string, wanted: string): string => `${song} wants ${wanted}`;
export const backupForWords = (instrument: string): string => `backup for ${instrument}`;
export const fileAsks = (asked: string): string => `the show file says ${asked}`;
export const songLabel = (position: number | null, song: string): string =>
	position === null ? song : `song ${position} ${song}`;
/** Where a song has no place in the list, or nothing was planned of it. */
export const NO_PLACE = '-';
/** Of a song that was planned, and that the show file left out when it was read again. */
export const NOT_IN_FILE = 'no longer in the show file';
export const beforeSong = (song: string): string => `before ${song}`;
export const AFTER_LAST = 'after the last song';
export const playedWords = (song: string, player: string, played: string): string =>
	`${song}: ${player} played ${played}`;
export const capoCell = (capo: number): string => `capo ${capo}`;
export const correctedFrom = (instrument: string): string => `corrected from ${instrument}`;
export const NOT_READY = 'not ready';
/** How long before the hand-over it was made ready. */
export const readyCell = (seconds: number, isStale: boolean): string =>
	`${isStale ? 'recheck, ' : ''}${minutesSeconds(seconds)} before`;
/** One that was made ready, but not as it was handed. */
export const readyInOther = (readyIn: string): string => `not ready (was in ${readyIn})`;
export const stringsBroken = (
	instrument: string,
	count: number,
	strings: readonly number[],
): string =>
	`${instrument}: ${count}${strings.length === 0 ? '' : ` (string ${strings.join(', ')})`}`;
export const songHeading = (position: number | null, title: string): string =>
	position === null ? `Dropped: ${title}` : `Song ${position}: ${title}`;
export const afterHeading = (title: string): string => `After ${title}`;

/** `4 Dace in drop D, capo 2`. */
export function inTuning(instrument: string, tuning: string | null, capo: number): string {
	return `${instrument}${tuning === null ? '' : ` in ${tuning}`}${capo > 0 ? `, capo ${capo}` : ''}`;
}
/** `drop D, capo 2`, or `drop D, no capo`. */
export const tuningAndCapo = (tuning: string, capo: number): string =>
	`${tuning}, ${capo > 0 ? `capo ${capo}` : 'no capo'}`;
export const sounding = (kind: string, tuning: string): string => `${kind} sounding ${tuning}`;
export const stuckPedal = (pedal: string): string => `${pedal} is stuck`;
/** Until when a pedal did not switch: `until 20:44, in song 8 Quarry`; `where` null after the last song. */
export const stuckUntil = (clock: string | null, where: string | null): string => {
	if (clock === null) return 'to the end';
	return `until ${clock}${where === null ? '' : `, ${where}`}`;
};

/** Of work, beside what the plan takes. */
export const workTookCell = (takenSeconds: number | null, plannedSeconds: number): string =>
	takenSeconds === null
		? ''
		: `${minutesSeconds(takenSeconds)} of ${minutesSeconds(plannedSeconds)}`;
/** `0:20 of 0:15, late`; what is not known is left out. */
export function tookCell(hand: {
	readonly takenSeconds: number | null;
	readonly wantedSeconds: number | null;
	readonly isLate: boolean | null;
}): string {
	const { takenSeconds, wantedSeconds, isLate } = hand;
	const took = takenSeconds === null ? null : minutesSeconds(takenSeconds);
	const of = wantedSeconds === null ? '' : ` of ${minutesSeconds(wantedSeconds)}`;
	const parts = [took === null ? null : took + of, isLate === true ? LATE : null];
	return parts.filter((one) => one !== null).join(', ');
}
export const LATE = 'late';
export const lateFor = (song: string): string => `late for ${song}`;
export const inSong = (song: string): string => `in ${song}`;
/** What became of a song's place in the list. */
export const listNote = (isAdded: boolean, isMoved: boolean): string =>
	[...(isAdded ? ['added'] : []), ...(isMoved ? ['moved'] : [])].join(', ');
/** What was planned; `isAbout`: nobody gave the length that it comes from. */
export const plannedCell = (text: string, isAbout: boolean): string =>
	`${isAbout ? 'about ' : ''}${text}`;
export const gapCell = (seconds: number, plannedSeconds: number | null): string =>
	plannedSeconds === null
		? minutesSeconds(seconds)
		: `${minutesSeconds(seconds)} of ${minutesSeconds(plannedSeconds)}`;
export const workWords = (job: string, tuning: string, capo: number): string =>
	`${job}, ${tuning}${capo === 0 ? '' : `, capo ${capo}`}`;
export const backAfter = (seconds: number): string =>
	`ready again after ${minutesSeconds(seconds)}`;
export const cuesMissed = (song: string, cues: readonly string[]): string =>
	`${song}: ${cues.join(', ')}`;
export const packWords = (one: {
	readonly what: 'changed' | 'suspected' | 'cleared' | 'fresh-battery' | 'left-off';
	readonly player: string | null;
	readonly pack: string;
	readonly from: string | null;
	readonly wearer: string | null;
}): string => {
	const { what, player, pack, from, wearer } = one;
	if (what === 'left-off') {
		const why = wearer === null ? 'was suspect' : `was on ${wearer}`;
		return `${player} ${from === null ? 'had no pack on' : `kept ${from}`}: ${pack} ${why}`;
	}
	if (what === 'cleared') return `${pack} is fine again`;
	if (what === 'fresh-battery') return `${pack} has a fresh battery`;
	if (what === 'suspected') return `${pack} is suspect${player === null ? '' : ` (${player})`}`;
	return `${player === null ? '' : `${player} has `}${pack}${from === null ? '' : `, before ${from}`}`;
};
export const takenBackWords = (count: number): string =>
	count === 1
		? 'One step was undone and is not in here.'
		: `${count} steps were undone and are not in here.`;

// For tomorrow.

export const REPAIRS = {
	restring: (strings: readonly (number | null)[]): string =>
		`restring (${strings.map((one) => (one === null ? 'broken string not noted' : `string ${one} broken`)).join(', ')})`,
	burr: 'several strings broke: feel the saddle for a burr',
	newStrings: (hours: number): string => `new strings, ${hours} h in hands`,
	repair: (fault: string): string => `repair: ${fault}`,
	wasOut: 'was out: find out why',
	pedal: (player: string, pedal: string, isOn: boolean): string =>
		`${player}'s board: ${pedal} is stuck ${isOn ? 'on' : 'off'}`,
	pack: (pack: string): string => `Pack ${pack}: suspect, check battery and channel`,
} as const;

// Tables for a spreadsheet; their names stay as they are, since others read them.

/** Before the others, where a table is of several nights. */
export const NIGHT_CELLS = ['night', 'day'] as const;
export const INCIDENT_CELLS = [
	'id',
	'mark',
	'clock',
	'position',
	'song',
	'kind',
	'player',
	'instrument',
	'string',
	'stand-in',
	'silence seconds',
	'words',
	'sound mark',
	'back mark',
	'out seconds',
	'remark',
] as const;
export const HAND_OVER_CELLS = [
	'mark',
	'clock',
	'song',
	'player',
	'instrument',
	'tuning',
	'capo',
	'by',
	'ready seconds',
	'stale',
	'corrected from',
	'wanted seconds',
	'taken seconds',
	'late',
	'noted',
	'tech',
	'ready in',
] as const;
export const SONG_CELLS = [
	'position',
	'song',
	'encore',
	'state',
	'planned position',
	'planned clock',
	'planned start seconds',
	'planned seconds',
	'planned gap seconds',
	'began mark',
	'began clock',
	'ended mark',
	'ended clock',
	'seconds',
	'gap seconds',
	'added',
	'moved',
] as const;
export const WORK_CELLS = [
	'mark',
	'clock',
	'instrument',
	'job',
	'tuning',
	'capo',
	'early',
	'planned seconds',
	'used mark',
	'used for',
	'left seconds',
	'late',
	'taken seconds',
	'done in',
	'done before',
	'wanted for',
] as const;
export const STRING_CELLS = [
	'mark',
	'clock',
	'song',
	'player',
	'instrument',
	'string',
	'string hours',
	'stand-in',
	'silence seconds',
	'restrung mark',
] as const;
export const yesOrNo = (is: boolean): string => (is ? 'yes' : 'no');
/** Empty where it is not known. */
export const yesNoUnknown = (is: boolean | null): string => (is === null ? '' : yesOrNo(is));
