// The run sheet, the plan and why a song is played on what it is, as they stand on paper: moments by the
// clock on the wall, where the show file says when the show starts.

import { minutesSeconds } from '../base/duration.ts';
import type { Job } from '../plan/plan.ts';
import type { Show } from '../showfile/show.ts';

/** A time of day, `20:05`. */
export function dayText(minutes: number): string {
	const whole = Math.floor(minutes);
	return `${String(Math.floor(whole / 60) % 24).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`;
}

/** A moment so many seconds after the first song: on the wall, without a start on the show clock. */
export function paperClock({ startMinutes }: Pick<Show, 'startMinutes'>, seconds: number): string {
	if (startMinutes === null) return minutesSeconds(seconds);
	const day = 24 * 60;
	return dayText((((startMinutes + seconds / 60) % day) + day) % day);
}

/** The same, `about 20:41` behind a song whose length nobody gave. */
export function expectedClock(
	show: Pick<Show, 'startMinutes'>,
	{ seconds, isAbout }: { readonly seconds: number; readonly isAbout: boolean },
): string {
	return `${isAbout ? 'about ' : ''}${paperClock(show, seconds)}`;
}

// The plan.

export const PARTS = { tight: 'Tight places', backups: 'Backups', warnings: 'Warnings' } as const;
export const MAYBE_BETTER = 'There may be a better plan.';
export const HANDS_EMPTY = 'hands empty';
export const NO_BACKUP = 'NO BACKUP';
/** Where a slot has nothing: what could be handed by hand all the same, though the plan takes it only when it is chosen. */
export const nothingFor = (backup: string | null, why: string): string =>
	`${backup === null ? NO_BACKUP : `NOTHING PLANNED, backup ${backup}`}${why === '' ? '' : `: ${why}`}`;
export const CUE = 'cue';
export const READY = 'ready';
export const keepsIt = (movedCapo: number | null): string =>
	movedCapo === null
		? 'keeps it'
		: `keeps it, ${movedCapo === 0 ? 'capo off' : `capo on ${movedCapo}`}`;

/** `0:48 left`, `nothing left`, `0:30 short`. */
export function leftWords(seconds: number): string {
	if (seconds < 0) return `${minutesSeconds(Math.max(1, -seconds))} short`;
	return seconds < 1 ? 'nothing left' : `${minutesSeconds(seconds)} left`;
}

/** `one hand-over`, `3 hand-overs`. */
export function handOverCount(count: number): string {
	return count === 1 ? 'one hand-over' : `${count} hand-overs`;
}

/** The gap, and what its hand-overs leave of it. */
export function roomWords(room: {
	readonly gapSeconds: number | null;
	readonly handOvers: number;
	readonly unfit: number;
	readonly takenSeconds: number;
	readonly place: 'cue' | 'after-interval' | null;
}): string {
	const { gapSeconds, handOvers, unfit, takenSeconds, place } = room;
	const after = place === null ? '' : place === 'cue' ? 'at the cue' : 'after the interval';
	const gap = gapSeconds === null ? null : `gap ${minutesSeconds(gapSeconds)}`;
	if (handOvers === 0) return gap === null ? after : `${gap}  no hand-over`;
	const count = handOverCount(handOvers);
	if (gapSeconds === null) return [after, count].join('  ').trim();
	if (unfit === 0) {
		const fits = handOvers === 1 ? 'fits' : 'fit';
		return `${gap}  ${count} ${fits}, ${leftWords(gapSeconds - takenSeconds)}`;
	}
	return `${gap}  ${count} ${handOvers === 1 ? 'DOES NOT FIT' : `DO NOT FIT: ${unfit} too many`}`;
}

/** `touch-up 0:45, start by 20:37`, or by how much it is short. */
export function workOnPaper(
	show: Show,
	{
		job,
		seconds,
		startBySeconds,
		isAbout,
		shortSeconds,
	}: Readonly<{
		job: Job;
		seconds: number;
		startBySeconds: number;
		isAbout: boolean;
		shortSeconds: number;
	}>,
): string {
	const when =
		shortSeconds > 0
			? `${minutesSeconds(shortSeconds)} short`
			: `start by ${expectedClock(show, { seconds: startBySeconds, isAbout })}`;
	return `${job} ${minutesSeconds(seconds)}, ${when}`;
}
export const BACKUP_TABLE = ['#', 'for', 'of', 'backup', 'in', '', ''] as const;

// Why.

/** What plans are compared by. */
export const FIGURE_NAMES = {
	missing: 'missing',
	substituted: 'backups',
	overGap: 'gap',
	lateness: 'late',
	backup: 'backup',
	handOvers: 'hand-overs',
	retunings: 'retunes',
	preference: 'preference',
} as const;
export const asksNothing = (title: string): string =>
	`${title} names nothing: everybody keeps what they have.`;
export const notInSet = (title: string): string => `${title} is not in tonight's set.`;
export const whyHeading = (
	player: string,
	song: { readonly title: string; readonly position: number },
	isNamed: boolean,
): string => {
	const reason = isNamed
		? 'The song names it, so nothing else is planned.'
		: 'The song leaves it open: the first column that differs decides.';
	return `${player} in ${song.title}, ${song.position} in the set. ${reason}`;
};
/** Under a table of what plans are compared by. */
export const HOW_COMPARED = 'The lowest figure wins, columns from the left.';
export const PREFERENCE_TOLD =
	'preference: 10 where the song prefers another, 5 for a spare, 1 for a capo.';
export const nothingBecause = (why: string): string => `nothing: ${why}`;
export const PLANNED = 'planned';
export const OR = 'or';
export const nothingElse = (leftOut: string): string =>
	leftOut === '' ? 'Nothing else fits.' : `Nothing else fits: ${leftOut}.`;
export const withCapo = (capo: number): string => (capo === 0 ? '' : ` capo ${capo}`);

// The run sheet.

export const SHEET = {
	heading: 'Run sheet',
	encore: 'ENCORE',
	segue: 'SEGUE',
	done: 'done',
	gap: 'gap',
	free: 'free',
	ends: 'ends',
	on: 'on',
	off: 'off',
	keeps: 'keeps',
	atStart: 'start',
	atRack: 'RACK',
	before: 'BEFORE THE SHOW',
	anyKind: 'anything of the kind',
	any: 'ANY',
	spares: 'SPARES',
	stays: 'board stays',
	youStart: 'YOU START',
	pressed: 'Cues',
	boards: 'Boards',
	warnings: 'Look at',
	cautions: 'Cautions',
	changed: 'CHANGED',
	new: 'NEW',
	tight: 'TIGHT',
} as const;
export const sheetStart = (clock: string): string => `start ${clock}`;
export const sheetCurfew = (clock: string): string => `curfew ${clock}`;
export const sheetReference = (hertz: number): string => `A4 = ${hertz} Hz`;
export const atCue = (cue: string): string => `${cue}: `;
export const tonightsList = (title: string): string => `${title}, tonight's list`;
export const gapWords = (gap: string): string => `gap ${gap}`;
/** Null for a stop: songs end so unless somebody says otherwise, and paper has what is to be known. */
export const endsWords = (ends: string): string | null =>
	ends === SHEET.segue ? ends : ends === 'stop' ? null : `ends ${ends}`;
/** `INTERVAL 20:00 long`: beside a time of day `20:00` alone would be one, too. */
export const intervalWords = (length: string): string => `INTERVAL ${length} long`;
export const noteWords = (notes: string): string => `note: ${notes}`;
export const checkWords = (leave: string): string => `check ${leave}`;
export const workFor = (song: string): string => `for ${song}`;
/** What a cue is said to bring, in quotes. */
export const sayWords = (say: string): string => `“${say}”`;

/** `Bo starts, count 4`, `starts: drums`; empty where nothing is known. */
export function startsWords(song: {
	readonly player: string | null;
	/** Whoever starts that is no player of the show. */
	readonly other: string | null;
	readonly count: number | null;
}): string {
	const { player, other, count } = song;
	const starter = player === null ? other && `starts: ${other}` : `${player} starts`;
	return [starter, count === null ? null : `count ${count}`]
		.filter((part) => part !== null)
		.join(', ');
}

/** What comes off as an interval begins. */
export const backWords = (held: readonly string[]): string => `off ${held.join(', ')}`;

/** `PACK P2 (G2)`. */
export function sheetPack(pack: string, channel: string | null): string {
	return channel === null ? `PACK ${pack}` : `PACK ${pack} (${channel})`;
}

/** When a piece of work is done: `in the interval`, `during 3 Gravel`. */
export function whenWords(
	at:
		| { readonly kind: 'before' | 'interval' }
		| { readonly kind: 'during' | 'after'; readonly song: string },
): string {
	if ('song' in at) return `${at.kind} ${at.song}`;
	return at.kind === 'before' ? 'before the show' : 'in the interval';
}

/** By how much work is too late, whatever is done. */
export const shortWords = (seconds: number): string => `${minutesSeconds(seconds)} SHORT`;

/** `0:45, start by 20:36`, or by how much it is short. */
export function workDeadline(work: {
	readonly seconds: number;
	readonly startBy: string;
	readonly shortSeconds: number;
}): string {
	const { seconds, startBy, shortSeconds } = work;
	const end = shortSeconds > 0 ? shortWords(shortSeconds) : `start by ${startBy}`;
	return `${minutesSeconds(seconds)}, ${end}`;
}

// What changed since the last printing.

export const NO_LONGER = 'no longer';
export const addedSong = (song: string): string => `Added: ${song}`;
export const droppedSong = (song: string): string => `Dropped: ${song}`;
export const movedSong = (from: string, to: string): string => `Moved: ${from} is now ${to}`;
export const changedSong = (song: string, what: string): string => `${song}: ${what}`;
export const changedClock = (song: string): string => `Clock times are others from ${song} on.`;
/** After why what a sheet says could not be kept. */
export const NEXT_CANNOT_TELL = 'The next printing cannot say what changed since this one.';
export const NOTHING_CHANGED = 'Nothing changed.';
export const OTHERS_CHANGED = 'The songs are the same; work, warnings, packs or the rack changed.';
/** `Since version 2, printed 2026-06-12 19:05`. */
export const sinceWords = (version: number, printed: string): string =>
	`Since version ${version}, printed ${printed}`;

/** `version 3, 7F3A9C, printed 2026-06-12 19:40`; the number only where printings are counted. */
export function versionWords(printing: {
	readonly version: number | null;
	readonly hash: string;
	readonly printed: string;
}): string {
	const { version, hash, printed } = printing;
	return `version ${version === null ? '' : `${version}, `}${hash}, printed ${printed}`;
}

// The pages beside the run sheet.

/** `spare for Ash and Bo`. */
export function spareFor(players: readonly string[]): string {
	return players.length === 0 ? 'spare, for nobody tonight' : `spare for ${listed(players)}`;
}
export const NOBODY_IN_PARTICULAR = 'anybody';

function listed(names: readonly string[]): string {
	return new Intl.ListFormat('en').format(names);
}

export const RACK = {
	heading: 'The rack',
	labels: 'Slot labels',
	columns: ['slot', 'instrument', 'tuning now', 'whose', 'case', 'pack'],
	inCase: (name: string): string => `case ${name}`,
	onPack: (pack: string): string => `pack ${pack}`,
	strings: (gauges: string): string => `strings ${gauges}`,
} as const;

export const RADIO = {
	heading: 'Radio',
	columns: ['player', 'pack', 'channel', 'from', 'on', 'tell'],
	pack: 'pack',
	channel: 'channel',
	tell: 'TELL THE DESK',
	from: (song: string, instrument: string): string => `from ${song} on ${instrument}`,
	spares: (packs: readonly string[]): string =>
		packs.length === 0 ? 'No spare pack.' : `Spare: ${packs.join(', ')}.`,
	told: (techs: readonly string[]): string =>
		`Another pack or channel: tell ${listed(['the desk', ...techs, 'whoever mixes the monitors'])} at once.`,
} as const;

export const floorHeading = (player: string): string => `For ${player}`;
export const cuesHeading = (player: string): string => `Cues, ${player}'s board`;
export const CUE_COLUMNS = ['at', 'press', 'whole board', 'say'] as const;
