// A show's list as text, as a table and as data, each of which can be made a show again without loss.

import { minutesSeconds } from '../base/duration.ts';
import type { Part, Show, Song } from '../showfile/show.ts';
import { columnUse, headingKey, isNobody, playerPartOf } from './columns.ts';
import { withGuard } from './formula-guard.ts';
import { kindIn } from './guess-kind.ts';
import { idFrom } from './player-ids.ts';
import { readPastedList } from './read-pasted-list.ts';

export type ListedSong = {
	readonly position: number;
	readonly title: string;
	readonly seconds: number | null;
	readonly section: 'set' | 'encore';
	/** By player; one who keeps is left out, null for empty hands. */
	readonly hands: Readonly<Record<string, ListedCell | null>>;
};

export type ListedCell = {
	/** An id; null where the plan chooses whichever sounds so. */
	readonly instrument: string | null;
	/** Canonical. */
	readonly tuning: string;
	readonly capo: number;
};

export type ListedShow = {
	readonly songs: readonly ListedSong[];
	/** `after` is the position of the song before. */
	readonly breaks: readonly { readonly after: number; readonly seconds: number }[];
};

/** The list as data. */
export function listedShow(show: Show): ListedShow {
	const songs: ListedSong[] = [];
	const breaks: { after: number; seconds: number }[] = [];
	const catalogue = new Map(show.songs.map((song) => [song.id, song]));
	for (const item of show.set) {
		if (item.kind === 'interval') {
			breaks.push({ after: songs.length, seconds: item.seconds });
			continue;
		}
		const song = catalogue.get(item.song);
		if (!song) continue;
		songs.push({
			position: songs.length + 1,
			title: song.title,
			seconds: song.lengthSeconds,
			section: item.isEncore ? 'encore' : 'set',
			hands: Object.fromEntries(
				Object.entries(song.parts).map(([player, part]) => [player, listedCell(show, part)]),
			),
		});
	}
	return { songs, breaks };
}

function listedCell(show: Show, part: Part): ListedCell | null {
	if (part.kind === 'none') return null;
	if (part.kind === 'needs') return { instrument: null, tuning: part.sounds.name, capo: 0 };
	const own = show.instruments.find(({ id }) => id === part.instrument)?.tuning.name ?? '';
	return { instrument: part.instrument, tuning: part.tuning?.name ?? own, capo: part.capo };
}

/** The list as a table with commas, a row a song. */
export function listCsv(show: Show): string {
	const titles = show.songs.map(({ title }) => title);
	const hasTwins = new Set(titles).size < titles.length;
	const isPlaying = (id: string) => show.songs.some(({ parts }) => Object.hasOwn(parts, id));
	const players = show.players.filter(
		({ id }) => isPlaying(id) || show.songs.some(({ starts }) => starts === id),
	);
	const head = ['Title', 'Length', 'Gap', 'Tempo', 'Starts', 'Ends', 'Notes', 'Section'];
	const rows = show.set.map((item): readonly string[] => {
		if (item.kind === 'interval') {
			return ['Interval', lengthText(item.seconds), '', '', '', '', '', 'interval'];
		}
		const song = show.songs.find(({ id }) => id === item.song);
		if (!song) return [];
		return [
			withGuard(song.title),
			song.lengthSeconds === null ? '' : lengthText(song.lengthSeconds),
			item.gapSeconds === null ? '' : lengthText(item.gapSeconds),
			song.tempo === null ? '' : String(song.tempo),
			withGuard(song.starts ?? ''),
			song.ends === 'stop' ? '' : song.ends,
			withGuard(song.notes ?? ''),
			item.isEncore ? 'encore' : 'set',
			...(hasTwins ? [song.id] : []),
			...players.map(({ id }) => {
				const part = song.parts[id];
				return part === undefined ? '' : cellText(show, part, id);
			}),
		];
	});
	const headings = headingsFor(players, isPlaying);
	return [[...head, ...(hasTwins ? ['Id'] : []), ...headings], ...rows]
		.map((cells) => `${cells.map(csvCell).join(',')}\n`)
		.join('');
}

/** Names where a name alone gives the player's id again, else with it. */
function headingsFor(
	players: readonly { readonly id: string; readonly name: string }[],
	isPlaying: (id: string) => boolean,
): readonly string[] {
	return players.map(({ id, name }) => {
		const isAlone = players.filter((one) => headingKey(one.name) === headingKey(name)).length === 1;
		const isWords = /^\p{L}[\p{L}\p{N} ]*$/u.test(name);
		const isPlain =
			isWords &&
			isAlone &&
			isPlaying(id) &&
			idFrom(name, 'player', new Set()) === id &&
			columnUse(name) === 'other' &&
			!isNobody(name) &&
			playerPartOf(name) === null;
		if (isPlain) return name;
		return isHeading(name) && isAlone ? `${name} [${id}]` : `[${id}]`;
	});
}

/** Whether a name can stand before its id in a heading, and before a cell in a line: it has no sign of theirs. */
function isHeading(name: string): boolean {
	return /^\p{L}[^[\]|:"\p{C}]*$/u.test(name) && !/\s\s|\s$/.test(name);
}

function cellText(show: Show, part: Part, player: string): string {
	if (part.kind === 'none') return '-';
	if (part.kind === 'needs') return `[${part.instrumentKind}] ${part.sounds.name}`;
	const instrument = show.instruments.find(({ id }) => id === part.instrument);
	const name = instrument?.name ?? part.instrument;
	const kind = instrument?.kind ?? 'electric-6';
	const guess = kindIn(name) ?? kindIn(player) ?? 'electric-6';
	const bracket = guess === kind ? part.instrument : `${part.instrument}, ${kind}`;
	// A name that has signs of the cell's own, or that a spreadsheet takes for a formula, is left to the id.
	const shown =
		name === part.instrument || /[[\]|]|^['=+\-@"]|\s{2}|:\s/.test(name) ? '' : `${name} `;
	const tuning = part.tuning?.name ?? instrument?.tuning.name ?? '';
	return `${shown}[${bracket}] ${tuning}${part.capo === 0 ? '' : ` c${part.capo}`}`;
}

/** `4:05`; from an hour on, and with parts of a second, in seconds: `4:05:00` is read as four minutes by many. */
function lengthText(seconds: number): string {
	return Number.isInteger(seconds) && seconds < 3600 && seconds > 0
		? minutesSeconds(seconds)
		: `${seconds}s`;
}

function csvCell(text: string): string {
	return /["\n,;\t]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** The list as lines, as a pasted list is read. */
export function listText(show: Show): string {
	const players = show.players;
	const headings = headingsFor(players, () => true);
	const lines: string[] = [];
	let position = 0;
	let isEncore = false;
	for (const item of show.set) {
		if (item.kind === 'interval') {
			lines.push('', `Interval (${lengthText(item.seconds)})`, '');
			continue;
		}
		if (item.isEncore !== isEncore) lines.push('', item.isEncore ? 'Encore' : 'Set');
		isEncore = item.isEncore;
		const song = show.songs.find(({ id }) => id === item.song);
		if (!song) continue;
		position += 1;
		lines.push(`${String(position).padStart(2)}. ${songText(show, song, headings)}`);
	}
	const title = titleLine(show.title);
	return `${[...(title === null ? [] : [title, '']), ...lines].join('\n')}\n`;
}

function songText(show: Show, song: Song, headings: readonly string[]): string {
	const length = song.lengthSeconds === null ? '' : ` (${lengthText(song.lengthSeconds)})`;
	const cells = show.players.map(({ id }, index) => {
		const part = song.parts[id];
		return part === undefined ? '' : ` | ${headings[index]}: ${cellText(show, part, id)}`;
	});
	const twins = show.songs.filter(({ title }) => title.toLowerCase() === song.title.toLowerCase());
	const quoted = `"${song.title.replaceAll('"', '""')}"${length}`;
	// Last, since they go on to the end of the line.
	const said = (song.notes ?? '').replace(/\s+/g, ' ').trim();
	const notes = said === '' ? '' : ` | ${NOTES}: ${said}`;
	const isPlain = twins.length === 1 && isPlainTitle(song.title, { length, notes });
	return `${isPlain ? `${song.title}${length}` : quoted}${cells.join('')}${notes}`;
}

/** What stands before a song's notes, as a player's name before a cell; a player of this name is called by an id. */
const NOTES = 'Notes';

/** Whether the line gives this title again, also among others like it. */
function isPlainTitle(
	title: string,
	{ length, notes }: { readonly length: string; readonly notes: string },
): boolean {
	// Behind a colon a list with known players could take the rest for a cell.
	if (/[|":]/.test(title) || HOUR.test(title)) return false;
	const lines = [1, 2, 3].map((number) => `${number}. ${title}${length}${notes}`);
	const { rows, title: heading } = readPastedList(lines.join('\n'), NOBODY);
	return (
		heading === null &&
		rows.length === lines.length &&
		rows.every(
			(row) =>
				row.kind === 'song' &&
				row.title === title &&
				row.doubt === null &&
				row.ends === null &&
				row.tempo === null &&
				row.notes.length === (notes === '' ? 0 : 1) &&
				Object.keys(row.hands).length === 0 &&
				(row.length === null) === (length === ''),
		)
	);
}

/** Where several lines have one, and the later the further down, it is read as an hour of the day. */
const HOUR = /^\d{1,2}[.h]\d\d|\d{1,2}[.h]\d\d\s*(?:am|pm|uhr)?$/i;

const NOBODY = { players: [], abbreviations: {} } as const;

/** The show's title as the first line, where it is read as one. */
function titleLine(title: string): string | null {
	const { rows, title: heading } = readPastedList(`${title}\n\n1. a`, NOBODY);
	return heading === title && rows.filter(({ kind }) => kind === 'song').length === 1
		? title
		: null;
}
