// What stands beside names and numbers on the stage view, and in short in every view: labels, what to do
// and how it stands. Labels end without a full stop.

import { minutesSeconds } from '../base/duration.ts';
import type { Job } from '../plan/plan.ts';

/** The names of the places. */
export const PLACES = {
	song: 'SONG',
	cue: 'CUE',
	notes: 'NOTES',
	toDo: 'TO DO',
	board: 'BOARD',
	watch: 'WATCH',
	/** In place of it where somebody has the wrong instrument in hands. */
	wrong: 'WRONG',
	curfew: 'CURFEW',
	last: 'LAST',
	notSaved: 'NOT SAVED',
	notSafe: 'NOT SAFE',
	elsewhere: 'ELSEWHERE',
	storage: 'STORAGE',
	rehearsal: 'REHEARSAL',
	follows: 'FOLLOWS',
} as const;

/** A number of seconds, right-aligned in the cells that it takes until it is an hour. */
function inCells(seconds: number): string {
	return minutesSeconds(seconds).padStart(6);
}

/** A number of seconds after the longest of these words that leave room for it, in so many cells. */
function countdown(words: readonly string[], seconds: number, columns: number): string {
	const number = minutesSeconds(seconds);
	const lead = words.find((one) => one.length + number.length <= columns) ?? '';
	return `${lead}${number.padStart(columns - lead.length)}`;
}

/** How many are not shown, and the key that shows all: `+2 more, ! all`. */
export const moreAndKey = (count: number, key: string): string =>
	count > 0 ? `+${count} more, ${key} all` : `${key} all`;

/** What is left out for want of room. */
export const moreWords = (count: number): string => `+${count} more`;

// The coming hand-over.

/** The cells of when it is handed. */
const WHEN_COLUMNS = 10;

/**
 * `in    2:33`, and past it `now`: before its song begins nobody knows how long it has been wanted, since that
 * waits for it. In a song that is on, by how much it is late: `0:12 late`.
 */
export function whenWords(untilSeconds: number, isSongOn: boolean): string {
	if (untilSeconds >= 0) return countdown(['in '], untilSeconds, WHEN_COLUMNS);
	return isSongOn
		? `${minutesSeconds(-untilSeconds)} late`.padStart(WHEN_COLUMNS)
		: 'now'.padEnd(WHEN_COLUMNS);
}

/** `for 7 Lantern`. */
export const forSong = (place: number | null, title: string): string =>
	`for ${place === null ? '' : `${place} `}${title}`;

/** `for solo in Lantern`. */
export const forCue = (cue: string | null, title: string): string =>
	`for ${cue ?? 'a cue'} in ${title}`;

/** How long the sound has been gone: `DOWN  0:04`. */
export const downWords = (seconds: number): string => `DOWN${inCells(seconds)}`;

/** What broke, where it is known. */
export const breakWords = (instrument: string | null): string =>
	instrument === null ? 'STRING BREAK' : `STRING BREAK ${instrument}`;

export const NO_BACKUP = 'NO BACKUP';
/** Nothing is planned by itself, and yet something could be handed: what, stands beside it. */
export const NOTHING_PLANNED = 'NOTHING PLANNED';
export const orBackup = (why: string, backup: string): string =>
	[...(why === '' ? [] : [why]), `backup ${backup}`].join('; ');
export const NO_BACKUP_PLAY_ON = 'NO BACKUP, PLAY ON';
/** Nothing is in hands before the song is over: `PLAY ON,   0:28 left`. */
export const playOnUntil = (seconds: number): string => `PLAY ON, ${inCells(seconds)} left`;
/** Why: `S Spare takes 1:05`; `it takes 1:05` of what was named just before. */
export const takesLonger = (instrument: string | null, seconds: number): string =>
	`${instrument ?? 'it'} takes ${minutesSeconds(seconds)}`;
/** What they get after it: `next 6 Sedge, drop D`, and the capo where one is to be on. */
export const nextIs = (instrument: string, tuning: string, capo: number): string =>
	`next ${inTuning(instrument, tuning, capo)}`;
/** `6 Sedge, drop D`, and the capo where one is to be on. */
export const inTuning = (instrument: string, tuning: string, capo: number): string =>
	[instrument, tuning, ...(capo > 0 ? [capoLabel(capo)] : [])].join(', ');
/** In tall letters, in place of a tuning. */
export const TALL = {
	noBackup: ['no backup', 'none'],
	nothingPlanned: ['nothing planned', 'none'],
	playOn: 'play on',
	keeps: 'keeps',
	nothing: 'empty',
	wrong: 'wrong',
	nobodyChanges: ['nobody', 'changes'],
	over: ['show', 'over'],
	take: 'take',
	ready: 'ready',
	notReady: 'not ready',
} as const;
/** A capo in tall letters beside what is kept: `capo 3`; moved, in fewer letters than usual: `on 3`, `off`. */
export const tallCapo = (capo: number): string => `capo ${capo}`;
export const tallCapoMove = (capo: number): string => (capo > 0 ? `on ${capo}` : 'off');
/** The same where the act does not fit, the longest first; C2 is the trade's own short: common practice. */
export const tallCapos = (capo: number): readonly string[] => [tallCapo(capo), `C${capo}`];
/** A capo in a line with little room. */
export const capoLabel = (capo: number): string => `CAPO ${capo}`;
export const capoMark = (capo: number): string => (capo > 0 ? ` c${capo}` : '');

export const KEEPS = 'keeps';
export const NOTHING_TO_COME = 'nothing to come';
export const HANDS_EMPTY = 'hands empty';
export const HAS = 'has';
export const HAS_NOTHING = 'has nothing';
export const keepsLabel = (instrument: string): string => `KEEPS ${instrument}`;
export const wrongLabel = (instrument: string): string => `WRONG ${instrument}`;
export const takeWords = (instrument: string): string => `TAKE ${instrument}`;
export const checkWords = (what: string): string => `check ${what}`;
const HAS_IT = ' HAS IT';
export const hasItLabel = (player: string): string => `${player.toUpperCase()}${HAS_IT}`;
/** Where somebody else has it, with what is to be done first once it is there: `BO HAS IT: CAPO OFF, RETUNE 2:25`; else null. */
export function hasItThen(status: string, act: string): string | null {
	const [who = '', ...work] = status.split(', ');
	return who.endsWith(HAS_IT) ? `${who}: ${[act, ...work].join(', ')}` : null;
}
/** A capo to be moved for a song further on. */
export const actForSong = (act: string, title: string): string => `${act} for ${title}`;

/** How a backup stands, and in how long it is handed. */
export const backupReadiness = (isReady: boolean, seconds: number): string =>
	`${isReady ? 'READY' : 'NOT READY'}, ${minutesSeconds(seconds)} to hand over`;

/** The pack to be put on with a hand-over. */
export const packToPutOn = (name: string, wearer: string | null): string =>
	wearer === null ? `PACK ${name}` : `PACK ${name} (${wearer} wears it)`;
/** The one that belongs to it is on somebody who plays on it; `worn` is what they have on, if anything. */
export const packElsewhere = (name: string, worn: string | null, wearer: string): string =>
	`${worn === null ? 'NO PACK' : `pack: keep ${worn}`} (${name} on ${wearer})`;
/** A pack that is kept although it is suspect, since there is no other. */
export const keptSuspect = (name: string): string => `${name} SUSPECT`;
export const packSuspect = (name: string, worn: string | null): string =>
	worn === null ? `pack ${name} SUSPECT` : `pack ${name} SUSPECT, keep ${worn}`;

/** Under a peg, where nobody is at work on it. */
export const PEG = { broken: 'BROKEN', faulty: 'FAULTY' } as const;

/** Under a tuning that leaves no room beside it. */
export const capoUnder = (capo: number): string => `capo ${capo}`;
export const NO_CAPO = 'no capo';
/** It sits where it is wanted. */
export const capoIsOn = (capo: number): string => `capo ${capo} on`;

/** Where what comes out of somebody's hands goes, and what is done to it then; `next`: what they get for what is there now. */
export const OFF = {
	label: 'off: ',
	next: 'next: ',
	bench: 'the bench',
	rack: 'the rack',
	slot: (slot: string): string => `slot ${slot}`,
} as const;
/** `1 Amber to slot 1`. */
export const offWords = (instrument: string, where: string): string => `${instrument} to ${where}`;
/** `1 Amber to slot 1, then RETUNE drop D, start within  12:30`, and the same in fewer letters. */
export const offWithin = (off: string, job: string, seconds: number): readonly string[] => [
	`${off}, then ${job}, start within ${inCells(seconds)}`,
	`${off}, then ${job} within ${inCells(seconds)}`,
	`${off}, then ${job}`,
	off,
];

// The song.

/** What stands between songs: the label of its row, and what is said of it. */
export const PHASE = {
	before: { label: 'SHOW', words: 'not begun' },
	changeover: { label: 'GAP', words: '' },
	interval: { label: 'INTERVAL', words: '' },
	encore: { label: 'ENCORE', words: 'waiting' },
	over: { label: 'SET', words: 'over for' },
	packed: { label: 'SHOW', words: 'closed' },
} as const;
/** What comes after what is on. */
export const AHEAD = {
	next: 'THEN',
	segue: 'SEGUE',
	interval: 'INTERVAL',
	encore: 'ENCORE',
} as const;
export const startsIn = (seconds: number): string => `starts in ${inCells(seconds)}`;
/** How long it has gone on, of how long it is to be where that is known: `   5:00 of 20:00`. */
export const lastedWords = (seconds: number, of: number | null): string =>
	`${inCells(seconds)}${of === null ? '' : ` of ${minutesSeconds(of)}`}`;
/** Behind that, where a gap goes on for longer than planned: `, 1:51 over`. */
export const gapOverWords = (seconds: number, planned: number): string =>
	seconds - planned < 1 ? '' : `, ${minutesSeconds(seconds - planned)} over`;
export const songPlaceWords = (place: number, of: number): string => `${place} of ${of}`;
export const SONG_ENDS = 'end of song';
export const SET_ENDS = 'end of set';
export const NOTHING = 'nothing';
export const startsWords = (title: string): string => `${title} starts`;
/** `  2:33 left`, past it `  0:43 over`: after the number, or `1:12 of 3:45 left` would be read before it. */
export const leftWords = (seconds: number): string =>
	`${inCells(Math.abs(seconds))} ${seconds <= -1 ? 'over' : 'left'}`;
export const elapsedWords = (seconds: number, length: number | null): string =>
	`${minutesSeconds(seconds)} of ${length === null ? '?' : minutesSeconds(length)}`;

export type NextSong = {
	readonly place: number;
	readonly title: string;
	readonly intervalSeconds: number | null;
	readonly starter: string | null;
	readonly gapSeconds: number | null;
	readonly count: number | null;
};

/** `20:00, then 7 Lantern, starts: Ash, gap 0:30, count 4`. */
export function nextSongWords(next: NextSong): string {
	const { place, title, intervalSeconds, starter, gapSeconds, count } = next;
	const interval = intervalSeconds === null ? '' : `${minutesSeconds(intervalSeconds)}, then `;
	return [
		`${interval}${place} ${title}`,
		...(starter === null ? [] : [`starts: ${starter}`]),
		...(gapSeconds === null ? [] : [`gap ${minutesSeconds(gapSeconds)}`]),
		...(count === null ? [] : [`count ${count}`]),
	].join(', ');
}

export const tempoWords = (tempo: number): string => `${tempo} BPM`;
export const endsWords = (ends: string): string => `ends: ${ends}`;

// What to do.

export const NOTHING_TO_DO = 'nothing to do';

/** What each job is called. */
export const JOB_WORDS: Readonly<Record<Job, string>> = {
	capo: 'CAPO',
	retune: 'RETUNE',
	restring: 'RESTRING',
	'touch-up': 'TOUCH UP',
};

/** A job and what it makes of it: `RETUNE drop D`; `RESTRING, DD`, or the tuning would be read as the strings. */
export const jobWords = (job: Job, tuning: string): string =>
	`${JOB_WORDS[job]}${job === 'restring' ? ',' : ''} ${tuning}`;

/** How much of a countdown there is room for. */
export type CountdownRoom = 'whole' | 'short' | 'least';

const WITHIN: Readonly<Record<CountdownRoom, string>> = {
	whole: 'start within ',
	short: 'within ',
	least: 'within ',
};
/** From an hour on there is less room for words. */
const WITHIN_SHORTER = ['within ', 'in '];

/**
 * How long until the latest start, else by how much it will be late: `start within   3:16`, `1:34 short`, the
 * number in the same cells. Never a moment, which is taken for another clock's.
 */
export function startWords(
	{ untilSeconds, shortSeconds }: { untilSeconds: number; shortSeconds: number | null },
	room: CountdownRoom,
): string {
	const within = WITHIN[room];
	if (shortSeconds === null) {
		return countdown([within, ...WITHIN_SHORTER], untilSeconds, within.length + 6);
	}
	const lead = room === 'least' ? '' : ' '.repeat(within.length);
	return `${lead}${inCells(shortSeconds)} short`;
}

/** The cells that such a countdown fills at most. */
export const startColumns = (room: CountdownRoom): number =>
	WITHIN[room].length + 6 + (room === 'least' ? 0 : ' short'.length);

/** For whom a piece of work is, for which song, and how long it has to wait: done sooner it is stale when handed. And the same in fewer letters. */
export function neededWords(player: string, place: number, waitSeconds: number): readonly string[] {
	const wait = waitSeconds < 1 ? '' : `, wait ${minutesSeconds(waitSeconds)}`;
	return [`for ${player}, ${forPlace(place)}${wait}`, `for ${player}, ${place}${wait}`];
}

/** Which song a piece of work is for, where there is no room for whom. */
export const forPlace = (place: number): string => `song ${place}`;

/** How the strings get there: `string 6 down to C2, 5 down to G2`. */
export function stringSteps(
	steps: readonly { readonly string: number; readonly how: string; readonly to: string }[],
	isTwice: boolean,
): string {
	const words = steps.map(({ string, how, to }) => `${string} ${how} to ${to}`).join(', ');
	return `string ${words}${isTwice ? ', then go round again' : ''}`;
}

// Boards.

export const BOARD_NOW = 'now ';
export const BOARD_AT = 'at  ';
/** The same where the cue's name leaves no room. */
export const BOARD_NEXT = 'next: ';
export const boardAt = (cue: string): string => `at ${cue}: `;
/** How the board is and will be, and the same in fewer letters. */
export const boardThen = (now: string, cue: string, then: string): readonly string[] => [
	`${now}; ${boardAt(cue)}${then}`,
	`${now}; ${cue}: ${then}`,
];
/** What is pressed at the next cue: `STOMP +DELAY −BOOST`. */
export const stompWords = (acts: string): string => `STOMP ${acts}`;
export const NO_STOMP = 'board stays';
export const pressOn = (pedal: string): string => `+${pedal}`;
/** Before what else there is to do. */
export const firstThen = (words: string): string => `${words},`;
export const pressOff = (pedal: string): string => `−${pedal}`;
export const BOARD = {
	allOff: 'all off',
	restOff: 'rest off',
} as const;
export const asCorrected = (words: string, isCorrected: boolean): string =>
	isCorrected ? `${words} (corrected)` : words;
export const listOn = (pedals: string): string => `${pedals} on`;
export const listOff = (pedals: string): string => `${pedals} off`;
/** What the song wants of a pedal that does not switch: `DRIVE on (STUCK off)`. */
export const wantedOfStuck = (wanted: string, isOn: boolean): string =>
	`${wanted} (STUCK ${isOn ? 'on' : 'off'})`;
export const stuckLabel = (pedal: string, isStuck: boolean): string =>
	isStuck ? `${pedal.toUpperCase()} STUCK` : pedal.toUpperCase();

// Warnings, curfew, what was last done.

export const NO_CURFEW = 'none given';
export const curfewWords = (curfew: string, end: string, hasEnded: boolean): string =>
	`${curfew}   the set ${hasEnded ? 'ended' : 'ends'} ${end}   `;
export const curfewLeft = (seconds: number): string => `${inCells(seconds)} before it`;
export const pastCurfew = (seconds: number, hasEnded: boolean): string =>
	`${inCells(seconds)} ${hasEnded ? 'over it' : 'TOO LONG'}`;
export const NOTHING_YET = 'nothing yet';
export const undoHint = (key: string): string => `${key} undo`;
export const NOTHING_REACHES_DISK = 'Nothing is reaching the disk.';
export const DISK_IS_SLOW = 'The disk is slow: the last keys are not on it yet.';

// The lowest rows.

export const lockedWords = (key: string): string => `LOCKED: press ${key}, then esc, to unlock`;
export const smallWords = (complete: string, isTiny: boolean): string =>
	isTiny ? 'small' : `small: ${complete} shows all`;
export const CANCEL = 'cancel';
