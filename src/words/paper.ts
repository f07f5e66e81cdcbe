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
		shortSeconds,
	}: Readonly<{
		job: Job;
		seconds: number;
		startBySeconds: number;
		shortSeconds: number;
	}>,
): string {
	const when =
		shortSeconds > 0
			? `${minutesSeconds(shortSeconds)} short`
			: `start by ${paperClock(show, startBySeconds)}`;
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
	interval: '    -- interval --',
	encore: '    -- encore --',
	song: 'song',
	ends: 'ends',
	segue: 'SEGUE',
	gap: 'gap',
	handOvers: 'hand-overs before it',
	done: 'done',
	keeps: 'keeps ',
	anyKind: 'anything of the kind',
	any: 'ANY',
	spares: 'SPARES',
	board: 'board',
} as const;
/** `Ch1: Drive, Boost`. */
export const sheetBoard = (at: string, words: string): string => `${at}: ${words}`;
export const sheetStart = (clock: string): string => `start ${clock}`;
export const sheetCurfew = (clock: string): string => `curfew ${clock}`;
export const sheetReference = (hertz: number): string => `A4 = ${hertz} Hz`;
export const atCue = (cue: string): string => `${cue}: `;
export const tonightsList = (title: string): string => `${title}, tonight's list`;
