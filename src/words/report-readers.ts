// What a player, production and a hire firm read of a night.

import { minutesSeconds } from '../base/duration.ts';
import { NOT_DESCRIBED, REHEARSAL, REPAIRS, songLabel } from './report.ts';

export const heading = (title: string, isRehearsal: boolean): string =>
	isRehearsal ? title + REHEARSAL : title;
export const signedBy = (who: string): string => `Signed: ${who}`;

const counted = (count: number, one: string, several: string): string =>
	count === 1 ? `one ${one}` : `${count} ${several}`;
const listed = (things: readonly string[]): string => things.join('; ');

// The player: two lines, kind.

export function playerThanks(night: {
	readonly name: string;
	readonly songs: number;
	readonly instruments: number;
	readonly handOvers: number;
	readonly late: number;
	/** Of each hand-over it is known whether it was late. */
	readonly isAllKnown: boolean;
}): string {
	const { name, songs, instruments, handOvers, late, isAllKnown } = night;
	const thanks = `Thanks for tonight, ${name}`;
	if (songs === 0) return `${thanks}.`;
	const played = `${counted(songs, 'song', 'songs')} on ${counted(instruments, 'instrument', 'instruments')}`;
	if (handOvers === 0) return `${thanks}: ${played}.`;
	if (late > 0) {
		const which = `${late} of ${counted(handOvers, 'hand-over', 'hand-overs')} came late`;
		return `${thanks}: ${played}; ${which}, sorry for that.`;
	}
	return `${thanks}: ${played}, ${isAllKnown ? 'every hand-over in time' : 'no hand-over noted as late'}.`;
}

export const NOTHING_NOTED = 'Nothing broke or failed in your hands, as far as it was noted.';
export const beforeNext = (needs: readonly string[]): string =>
	`Before the next show: ${listed(needs)}.`;

/** `On pack P4 since 20:11, before that P2.` */
export function packNow(pack: string, clock: string, from: string | null): string {
	return `On pack ${pack} since ${clock}${from === null ? '' : `, before that ${from}`}.`;
}

/** The technician's slip, said to whose board it was. */
export function cuesMissedIn(song: string, cues: readonly string[]): string {
	return `Missed in ${song}, sorry: ${cues.length === 1 ? 'cue' : 'cues'} ${cues.join(', ')}.`;
}

type Incident = {
	readonly kind: string;
	readonly kindWords: string;
	readonly position: number | null;
	readonly song: string | null;
	readonly before: string | null;
	readonly instrument: string | null;
	/** Number of the string that broke. */
	readonly string: number | null;
	readonly pedal: string | null;
	/** Until when a pedal was stuck; null for an incident of none. */
	readonly until: string | null;
	readonly silenceSeconds: number | null;
	readonly standIn: string | null;
	readonly remark: string | null;
};

/** What went wrong, with how long the sound was gone: `String 2 broke in song 3 Gravel (1 Amber): sound back after 0:15, on S Spare.` */
export function incidentSentence(one: Incident): string {
	const { song, before, instrument, silenceSeconds, standIn, remark } = one;
	const where =
		song !== null
			? ` in ${songLabel(one.position, song)}`
			: before === null
				? ''
				: ` before ${before}`;
	const after = remark === null ? '' : ` ${remark}`;
	if (one.kindWords === NOT_DESCRIBED) return `An incident${where}, not described.${after}`;
	const on = instrument === null ? '' : ` (${instrument})`;
	const silence =
		silenceSeconds === null ? '' : `: sound back after ${minutesSeconds(silenceSeconds)}`;
	const until = one.until === null ? '' : `, ${one.until}`;
	const backup = standIn === null ? '' : `${silence === '' ? ':' : ','} on ${standIn}`;
	return `${whatHappened(one)}${where}${on}${until}${silence}${backup}.${after}`;
}

/** The same to whom the instrument belongs: `2 Kestrel: no sound.` */
export function itemIncident(one: Incident): string {
	const what = whatHappened(one);
	const said = what.slice(0, 1).toLowerCase() + what.slice(1);
	return `${one.instrument}: ${said}.${one.remark === null ? '' : ` ${one.remark}`}`;
}

function whatHappened({ kind, kindWords, string, pedal }: Incident): string {
	if (kind === 'string-break') return string === null ? 'A string broke' : `String ${string} broke`;
	if (pedal !== null) return `${pedal} stuck`;
	return capitalised(TROUBLES.get(kind) ?? kindWords);
}

/** Kinds of incident that are no sentence by themselves; a later program may have written any other word. */
const TROUBLES: ReadonlyMap<string, string> = new Map(
	Object.entries({
		battery: 'battery trouble',
		wireless: 'wireless trouble',
		amp: 'amp trouble',
		pedal: 'pedal trouble',
		tuning: 'wrong tuning or capo',
		cable: 'cable trouble',
		other: 'other trouble',
	}),
);

const capitalised = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

// Production: half a page.

export const PRODUCTION_PARTS = {
	lost: 'Time lost',
	incidents: 'What went wrong',
	tomorrow: 'What it costs tomorrow',
} as const;
export const NO_INCIDENT = 'No incident is noted.';
/** Where nothing is to be repaired; `otherwise`: instruments that are not as the show file says. */
export const nothingTomorrow = (otherwise: number): string => {
	const nothing = 'Nothing is noted to repair or restring before the next show.';
	if (otherwise === 0) return nothing;
	const [are, them] =
		otherwise === 1 ? ['One instrument is', 'it'] : ['Some instruments are', 'them'];
	return `${nothing} ${are} not as the show file says: the technician puts ${them} right.`;
};

/** `Began 20:31, 1:00 late; ended 22:38, 3:05 later than planned (22:35). …` */
export function ranWords(night: {
	readonly began: string | null;
	readonly ended: string | null;
	readonly plannedEnd: string | null;
	readonly startLateSeconds: number | null;
	readonly endLateSeconds: number | null;
	readonly seconds: number | null;
	readonly plannedSeconds: number;
	readonly isOver: boolean;
}): string {
	const { began, ended, plannedEnd, seconds, plannedSeconds, isOver } = night;
	if (began === null) return 'No song began.';
	const start = `Began ${began}${lateWords(night.startLateSeconds)}`;
	if (ended === null) return `${start}; ${isOver ? 'its end is not known' : 'still open'}.`;
	const planned = plannedEnd === null ? '' : ` (planned ${plannedEnd})`;
	const end = `ended ${ended}${lateWords(night.endLateSeconds)}${planned}`;
	if (seconds === null) return `${start}; ${end}.`;
	const over = seconds - plannedSeconds;
	const ran = `${minutesSeconds(seconds)} against ${minutesSeconds(plannedSeconds)} planned`;
	const apart =
		Math.abs(over) < 1
			? 'to time'
			: `${minutesSeconds(Math.abs(over))} ${over > 0 ? 'over' : 'under'}`;
	return `${start}; ${end}. It ran ${ran}: ${apart}.`;
}

function lateWords(seconds: number | null): string {
	if (seconds === null) return '';
	if (Math.abs(seconds) < 1) return ', to time';
	return `, ${minutesSeconds(Math.abs(seconds))} ${seconds > 0 ? 'late' : 'early'}`;
}

/** The curfew, whether or not it was met. */
export function curfewSentence(
	curfew: {
		readonly clock: string;
		readonly overSeconds: number | null;
		readonly isMet: boolean | null;
	} | null,
): string {
	if (curfew === null) return 'Curfew: the show file gives none.';
	const { clock, overSeconds, isMet } = curfew;
	if (overSeconds === null || isMet === null)
		return `Curfew ${clock}: not known whether it was met.`;
	const apart = minutesSeconds(Math.abs(overSeconds));
	return isMet ? `Curfew ${clock}: met, ${apart} left.` : `Curfew ${clock}: passed by ${apart}.`;
}

export function songsSentence(songs: {
	readonly played: number;
	readonly cutShort: number;
	/** Titles: begun and left at once; put in tonight; played at another place than planned; never on. */
	readonly skipped: readonly string[];
	readonly added: readonly string[];
	readonly moved: readonly string[];
	readonly left: readonly string[];
}): string {
	const { played, cutShort, skipped, added, moved, left } = songs;
	const named = (what: string, titles: readonly string[]): readonly string[] =>
		titles.length === 0 ? [] : [`${what} ${titles.join(', ')}`];
	const parts = [
		`${counted(played, 'song', 'songs')} played`,
		...(cutShort === 0 ? [] : [`${cutShort} cut short`]),
		...named('begun and skipped:', skipped),
		...named('added:', added),
		...named('moved:', moved),
		...named('not played:', left),
	];
	return `${capitalised(parts.join('; '))}.`;
}

export const lostSum = (seconds: number): string =>
	seconds < 1
		? 'No part took longer than planned.'
		: `${minutesSeconds(seconds)} in all, counting each part that took longer than planned.`;

export function lostWords(lost: {
	readonly where: 'start' | 'gap' | 'interval' | 'song';
	readonly song: string;
	readonly seconds: number;
	readonly why: readonly string[];
}): string {
	const { where, song, seconds, why } = lost;
	const place = {
		start: 'before the first song',
		gap: `before ${song}`,
		interval: `interval before ${song}`,
		song: `in ${song}`,
	}[where];
	const reason = why.length === 0 ? 'no reason noted' : listed(why);
	return `${minutesSeconds(seconds)} ${place}: ${reason}`;
}

export const lostByIncident = (kind: string, instrument: string | null): string =>
	instrument === null ? kind : `${kind} on ${instrument}`;
export const lostByHandOver = (player: string): string => `hand-over to ${player} late`;

// The hire firm: its items.

export const HIRE_TABLE = ['Item', 'Serial', 'Owner', 'Hours played', 'Condition'] as const;
export const NOTHING_HIRED = 'No instrument of this show is hired.';
export const NOTHING_BROKE = 'Nothing of it broke.';
/** `1:05 h`. */
export function hoursCell(seconds: number): string {
	const minutes = Math.round(seconds / 60);
	return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')} h`;
}

export function conditionWords(item: {
	readonly stringsDown: readonly (number | null)[];
	readonly faults: readonly string[];
	readonly isOut: boolean;
	readonly restrings: number;
}): string {
	const { stringsDown, faults, isOut, restrings } = item;
	const parts = [
		...(stringsDown.length > 0 ? [REPAIRS.restring(stringsDown)] : []),
		...faults.map(REPAIRS.repair),
		...(isOut && faults.length === 0 ? ['put aside, reason not noted'] : []),
		...(restrings > 0 ? ['restrung tonight'] : []),
	];
	return parts.length === 0 ? 'no fault noted' : listed(parts);
}

// Roles, where names of people are left out.

export const ROLES = {
	player: 'player',
	tech: 'tech',
	somebody: 'somebody',
	/** `guitar 1`; the only one of a kind has no number. */
	numbered: (role: string, number: number, of: number): string =>
		of === 1 ? role : `${role} ${number}`,
} as const;
