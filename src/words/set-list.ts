// What is said of a set list that becomes a show: what could not be read in one way, what was decided, what to
// do next; the comments in the file that is written.

import type { Choice } from '../setlist/choices.ts';
import type { Asked, AskedWhy, ListReading, Said } from '../setlist/list-reading.ts';
import type { DraftInstrument, DraftPart, DraftSong, ShowDraft } from '../setlist/show-draft.ts';
import { KINDS } from '../tuning/kind.ts';
import { kindWords } from './kinds.ts';

const WHY: Readonly<Record<AskedWhy, string>> = {
	'two-ways': 'it can be read in more than one way',
	'capo-range': 'a capo goes on a fret from 0 to 12',
	'extra-words': 'part of it is known and the rest is not: a tuning, or another instrument?',
	'too-long': 'it is too long for an instrument and a tuning',
	'own-word': "it is an instrument, or the act's own word for a tuning",
	'no-standard': 'no standard tuning of this kind has that note',
	'length-or-title': 'the number is a length in seconds, a tempo or part of the title',
	'interval-or-song': 'it is an interval or a song of that name',
	'which-player': 'the list does not say whose tuning it is',
	'shorthand-in-title': 'part of the title reads as a tuning or a capo, and nothing says whose',
	total: 'it is a total',
	heading: 'it is a heading',
	'no-song': 'it is no song',
	'no-title': 'the row has no title',
	alone: 'it stands alone in its row and not under the titles: a heading, or a song?',
	'heading-or-song': 'it may be a heading or a remark instead of a song',
	'no-such-instrument': 'no instrument is called so',
	'no-such-slot': 'no instrument of the rack file hangs there',
	nearly: 'no instrument is called so',
	'which-instrument': 'it does not say which instrument',
	'tuning-of-another-kind': 'this kind of instrument has no such tuning',
	'capo-on-this-kind': 'no capo goes on this kind of instrument',
	'capo-on-nothing': 'it does not say what the capo goes on',
	'bad-length': 'it cannot be read as a length, such as 4:05',
	'bad-tempo': 'it cannot be read as a tempo, 20 to 400',
	'bad-gap': 'it cannot be read as a gap, such as 30s',
	'bad-ends': 'it is none of stop, ring, segue, talk',
	'nearly-a-player': 'it is nearly a player and not quite',
	'interval-place': 'an interval stands between two songs that are no encore',
	'empty-encore': 'no song follows',
	'title-too-long': 'a title has 1,000 characters at the most',
	'unknown-tuning': 'it stands in a column of tunings and is none that is known',
	'no-such-song': 'no song above is that one, or nothing is known of what is played there',
	'same-as-open': 'what they have in that song is left open, or was never said',
	'column-unclear': 'its cells are names, of instruments or of something else',
};

/** Why it has to be asked, as one sentence without its full stop. */
export function whyAsked({ why, near, column }: Asked): string {
	if (why === 'column-unclear') return `${WHY[why]}; --column "${column}=PLAYER" makes it a player`;
	const more = near === null ? '' : `: did you mean ${near}?`;
	const how = why === 'shorthand-in-title' ? BEHIND_THE_TITLE : '';
	return `${WHY[why]}${more}${how}`;
}

const BEHIND_THE_TITLE = '; write it behind the title, as in | Ash: Amber DD c2';

/** Where it stands: `row 7, Bo`. */
function askedPlace({ row, column }: Asked): string {
	return column === '' ? `row ${row}` : `row ${row}, ${column}`;
}

/** A line for one thing that was left open. */
export function askedLine(one: Asked): string {
	const why = whyAsked(one);
	return `${askedPlace(one)}: "${one.text}": ${why}${/[?.]$/.test(why) ? '' : '.'}`;
}

/** A question about one place of the list, what can be answered by its number below it. */
export function question(one: Asked, choices: readonly Choice[], takesLine: boolean): string {
	const lines = choices.map((choice, index) => `  ${index + 1} ${choiceWords(choice)}`);
	const line = one.why === 'no-title' ? 'Type the title' : 'Type the whole cell anew';
	const ways = [
		...(choices.length === 0 ? [] : [`Type ${figures(choices.length)}`]),
		...(takesLine ? [choices.length === 0 ? line : line.toLowerCase()] : []),
	];
	const doubt = askedLine(one).replace(BEHIND_THE_TITLE, '');
	return [doubt, ...lines, `${ways.join(', or ')}; ${LEAVING}`].join('\n');
}

/** `1 or 2`, `1, 2 or 3`. */
const figures = (count: number): string =>
	Array.from({ length: count }, (_, index) => index + 1)
		.join(', ')
		.replace(/, (\d+)$/, ' or $1');

const LEAVING = 'enter leaves it open, u takes the last answer back, Ctrl-C writes nothing: ';

function choiceWords(choice: Choice): string {
	switch (choice.means) {
		case 'title':
			return 'all of it is the title';
		case 'length':
			return 'a length in seconds';
		case 'tempo':
			return 'a tempo in BPM';
		case 'heading':
			return 'a heading or a remark, and no song';
		case 'song':
			return 'a song';
		case 'interval':
			return 'an interval';
		case 'notes':
			return "nobody's: keep it in the song's notes";
		case 'hands':
			return `"${choice.piece}" is what ${choice.player.name} plays`;
		case 'mark':
			return choice.as === 'none'
				? `${choice.mark} is empty hands, wherever it stands`
				: `${choice.mark} keeps what they have, wherever it stands`;
		case 'near':
			return choice.name;
		case 'tuning':
			return `${choice.word} is a tuning of the act's own, wherever it stands`;
		case 'instrument':
			return `${choice.name} is an instrument, wherever it stands`;
	}
}

/** What a word of the act's own means. */
export const tuningQuestion = (word: string): string =>
	`Which tuning is ${word}? A name, or its notes from the highest-numbered string down, such as D2 A2 D3 G3 A3 D4; enter goes back: `;
export const NO_SUCH_TUNING =
	'No instrument has a tuning of that name, and these are not its notes.';

/** What instruments are, whose kind was guessed. */
export function kindsQuestion(guessed: readonly DraftInstrument[]): string {
	const groups = Map.groupBy(guessed, ({ kind }) => kind);
	const lines = [...groups].map(
		([kind, all]) => `  ${kindWords(kind)}: ${all.map(({ name }) => name).join(', ')}`,
	);
	return [KINDS_GUESSED, ...lines, `${KINDS_HOW}; ${ENTER_RIGHT}`].join('\n');
}

const KINDS_GUESSED = 'Guessed, since no cell says what kind of instrument these are:';
const KINDS_HOW = 'Type those that are something else, such as Heron acoustic, Finch mandolin';
const ENTER_RIGHT = 'enter: all are right, u takes the last answer back, Ctrl-C writes nothing: ';
export const NO_SUCH_KIND =
	'Each needs its name and then its kind: electric, acoustic, nylon, 12-string, baritone, bass, 5-string bass, upright, mandolin, banjo, ukulele or resonator.';

export const columnQuestion = (column: string): string =>
	`Column ${column}: ${WHY['column-unclear']}.\nIf it is a player, type the name; enter keeps it in the notes: `;

const BY: Readonly<Record<Extract<Said, { code: 'made' }>['by'], string>> = {
	answer: 'as you said',
	cell: 'as their cells say',
	name: 'by their names',
	heading: 'by the heading of the column',
	group: 'by the heading above the columns',
	tuning: 'by their tunings',
	nothing: 'guessed, since nothing says what they are (a heading such as Bo bass does)',
};

/** What kinds the instruments were taken for that no rack names, a line for each kind and reason. */
export function madeLines(reading: ListReading): readonly string[] {
	const groups = new Map<string, string[]>();
	for (const one of reading.said) {
		const made =
			one.code === 'made' ? reading.instruments.find(({ id }) => id === one.instrument) : undefined;
		if (one.code !== 'made' || !made) continue;
		const group = `${kindWords(made.kind)}, ${BY[one.by]}`;
		const isUsual = made.tuning === KINDS[made.kind].usual;
		const name =
			isUsual || made.name.includes(made.tuning) ? made.name : `${made.name} (${made.tuning})`;
		groups.set(group, [...(groups.get(group) ?? []), name]);
	}
	return [...groups].map(([group, names]) => `New, ${group}: ${names.join(', ')}.`);
}

/** What was decided about a row or the whole list; null for what is said where it stands. */
export function saidLine(said: Said): string | null {
	if (said.code === 'above' || said.code === 'below')
		return `Not songs, ${said.code} the list: ${said.texts.join(' / ')}`;
	if (said.code === 'among') return `Not songs, in the list: ${said.texts.map(short).join(' / ')}`;
	if (said.code === 'group')
		return `${said.text}, above the columns: what ${said.players.join(', ')} ${said.players.length === 1 ? 'plays' : 'play'}.`;
	if (said.code === 'clock-column')
		return `Clock times or running totals, not lengths, so not used: ${said.columns.length === 1 ? 'column' : 'columns'} ${said.columns.map((one) => one.replace(/\.$/, '')).join(', ')}.`;
	if (said.code === 'dotted-lengths')
		return `Column ${said.column}: its lengths were read as minutes and seconds, 3.45 as 3:45.`;
	if (said.code === 'in-one-line')
		return `Several songs stand in one line, with "${said.sign.trim()}" between them.`;
	if (said.code === 'clock-lines')
		return `The times beside the songs go up from ${said.first} and were not read as lengths.`;
	if (said.code === 'side-by-side')
		return `${said.count} lists stand side by side; they were read one after the other, the left one first.`;
	if (said.code === 'unheaded-player')
		return `Column ${said.column} has no heading and instruments in its cells; its player is called ${said.name} for now.`;
	if (said.code === 'parts')
		return said.rows.length === 1
			? `Row ${said.rows[0]} stands under ${said.title}, and was kept in its notes.`
			: `Rows ${said.rows.join(', ')} stand under ${said.title}, and were kept in its notes.`;
	if (said.code === 'as-table') return 'The lines are a table, and were read as one.';
	if (said.code === 'as-lines') return 'The table has one column, and was read as lines.';
	if (said.code === 'into-notes')
		return `Kept in the songs' notes: the columns ${said.columns.join(', ')}.`;
	if (said.code === 'no-headings')
		return `The table has no headings; column ${said.title} was taken for the titles.`;
	if (said.code === 'length-column')
		return said.column === ''
			? `Column ${said.number} has no heading; its cells were taken for lengths.`
			: `Column ${said.column}: its cells were taken for lengths.`;
	if (said.code === 'capo-column')
		return `Column ${said.column || 'without a heading'}: its numbers were taken for the capos of ${said.player}.`;
	if (said.code === 'named-in-lines')
		return `Taken for players, since instruments stand behind their names: ${said.names.join(', ')}.`;
	if (said.code === 'names-column')
		return `Column ${said.column} has names only; they were taken for instruments.`;
	if (said.code === 'one-player')
		return 'The list names no player: the tunings in brackets go to one called Guitar. Each holds until the next; a capo by itself does not change it.';
	if (said.code === 'blank-lines')
		return `Row ${said.row}: the first blank line after songs begins the encore; there are more of them.`;
	if (said.code === 'interval-length')
		return `Row ${said.row}: the interval has no length; 20 minutes were written.`;
	if (said.code === 'turned-length')
		return `Row ${said.row}: the length is in hours; it was read in minutes, as spreadsheets turn them.`;
	if (said.code === 'twice')
		return `${said.title} stands in rows ${said.rows.join(', ')}: one song, listed ${said.rows.length} times.`;
	if (said.code === 'same-title')
		return `Row ${said.row}: another ${said.title} than above, since its cells differ: a song of its own.`;
	if (said.code === 'same-as')
		return `Row ${said.row}: everybody has in ${said.title} what they have in ${said.as}, as the list says.`;
	if (said.code === 'usual-with-capo')
		return `Row ${said.row}: a capo and no tuning; the usual tuning was written.`;
	return null;
}

const short = (text: string): string => (text.length > 60 ? `${text.slice(0, 57)}…` : text);

const KEEPS = 'A player whom a song does not name keeps what the song above says.';

/** What the file holds beside the list. */
export type FileRemarks = {
	readonly source: string;
	readonly isDateGuessed: boolean;
	readonly isStartGuessed: boolean;
	readonly isTitleGuessed: boolean;
	/** Players who were there before, whom the draft does not hold. */
	readonly players?: readonly { readonly id: string; readonly name: string }[];
};

/** The draft with the comments that go into its file. */
export function withRemarks(draft: ShowDraft, reading: ListReading, file: FileRemarks): ShowDraft {
	const lines = reading.said.flatMap((one) => saidLine(one) ?? []);
	const loose = reading.asked.filter(({ song }) => song === null);
	const { isTitleGuessed, isDateGuessed, isStartGuessed } = file;
	const songs: DraftSong[] = draft.songs.map((song) => {
		const open = reading.asked.filter((one) => one.song === song.id);
		return open.length === 0 ? song : { ...song, remarks: open.map(openRemark) };
	});
	return {
		...draft,
		songs,
		instruments: draft.instruments.map((one, index) =>
			underPlayer(one, { ...draft, players: [...(file.players ?? []), ...draft.players] }, index),
		),
		remarks: [`Made from ${file.source}.`, ...lines, ...loose.map(openRemark)],
		showRemarks: {
			...(isTitleGuessed ? { title: "the list file's name" } : {}),
			...(isDateGuessed ? { date: 'today, since the list has no date' } : {}),
			...(isStartGuessed ? { start: 'not in the list: put in the right time' } : {}),
		},
		partRemarks: partRemarks(draft, reading),
	};
}

/** The first instrument of each player has the player's name above it. */
function underPlayer(
	one: DraftInstrument,
	draft: {
		readonly players: readonly { readonly id: string; readonly name: string }[];
		readonly instruments: readonly DraftInstrument[];
	},
	index: number,
): DraftInstrument {
	const [player] = one.for ?? [];
	const [before] = draft.instruments[index - 1]?.for ?? [];
	if (player === undefined || player === before) return one;
	return { ...one, remarks: [draft.players.find(({ id }) => id === player)?.name ?? player] };
}

function partRemarks(
	draft: ShowDraft,
	reading: ListReading,
): Partial<Record<DraftPart, readonly string[]>> {
	const hasHands = draft.songs.some(({ hands }) => Object.keys(hands).length > 0);
	return { instruments: madeLines(reading), ...(hasHands ? { songs: [KEEPS] } : {}) };
}

const openRemark = (one: Asked): string => `OPEN, ${askedLine(one)}`;

/** The line at the end. */
export function closingLine(counts: {
	readonly rows: number;
	readonly songs: number;
	readonly understood: number;
	readonly left: number;
}): string {
	const { rows, songs, understood, left } = counts;
	return `${counted(rows, 'row')} read, ${counted(songs, 'song')} made, ${counted(understood, 'cell')} understood, ${left} left open.`;
}

function counted(count: number, what: string): string {
	return `${count} ${what}${count === 1 ? '' : 's'}`;
}

export const nextStep = (file: string, isClean: boolean): string =>
	isClean
		? `Next: rackside run ${file} opens the live screen.`
		: `Next: put right what is marked OPEN in ${file}; then rackside run ${file} opens the live screen.`;

/** What every show has, as the list says it or as it was taken. */
export const takenForNow = (
	{ title, date, start, curfew }: Pick<ShowDraft, 'title' | 'date' | 'start' | 'curfew'>,
	guessed: Pick<FileRemarks, 'isTitleGuessed' | 'isDateGuessed' | 'isStartGuessed'>,
): string => {
	const name = guessed.isTitleGuessed ? `${title}, after the list's file` : title;
	const parts = [
		{ text: `on ${date}`, isGuessed: guessed.isDateGuessed },
		{ text: `start ${start}`, isGuessed: guessed.isStartGuessed },
		...(curfew === null ? [] : [{ text: `curfew ${curfew}`, isGuessed: false }]),
	];
	const those = (isGuessed: boolean) =>
		parts.flatMap((part) => (part.isGuessed === isGuessed ? [part.text] : [])).join(', ');
	const said = those(false) === '' ? '' : `; ${those(false)}, as the list says`;
	if (those(true) === '') return `Called ${name}${said}.`;
	const it = parts.filter(({ isGuessed }) => isGuessed).length === 1 ? 'it' : 'them';
	return `Called ${name}${said}; ${those(true)}, which no list says. Put ${it} right at the top of the file.`;
};

// What cannot be used.

export const OUT_EXAMPLE = 'rackside new friday.yaml --songs list.csv';
export const NEEDS_A_LIST = 'no list was given, and there is no terminal to ask on';
export const LIST_OPTIONS =
	'Give one with --songs FILE or --list FILE; - reads standard input. Or take an earlier night with --from last.';
export const TWO_LISTS = '--songs and --list are both given';
export const LIST_AND_NIGHT = '--from and a list of songs are both given';
export const LIST_OR_NIGHT =
	"Give one of them. For this list beside an earlier show's players and instruments: --rack and that show's file.";
export const ONE_OF_THEM = 'Give one of them.';
export const NO_FILE = 'there is no such file';
export const notReadable = (cause: string): string => `the file cannot be read (${cause})`;
export const NOTHING_PIPED = 'nothing comes from standard input';
export const PIPE_IT = 'Pipe the list into it, or name a file.';
const SHEETS: Readonly<Record<string, string>> = {
	xlsx: "this is a spreadsheet's own file (.xlsx)",
	ods: "this is a spreadsheet's own file (.ods)",
	xls: "this is a spreadsheet's own file (.xls)",
	numbers: "this is a spreadsheet's own file",
	zip: 'this is a packed file',
	pdf: 'this is a PDF file',
};
export const notText = (is: string | null): string =>
	is === null ? 'this is not text' : (SHEETS[is] ?? 'this is not text');
export const SAVE_AS_CSV =
	'In the spreadsheet choose File, Save as (or Export), CSV with UTF-8; give that file. Or copy the cells and paste them to rackside new OUT.yaml --songs -';
export const EMPTY_LIST = 'there is nothing in the list';
export const NO_TITLES = 'no column of titles was found';
export const NAME_TITLES = 'Give the column of titles the heading Title.';
export const NO_SONGS = 'there is no song in the list';
export const A_SONG_A_ROW = 'A row with a title is a song.';
export const NO_SUCH_COLUMN = '--column names a heading that the table does not have';
export const BAD_COLUMN = '--column is not HEADING=player';
export const TOO_LONG = 'the list is longer than a million characters';
export const CUT_IT = 'Give the rows of one night only.';
export const fileIsThere = (isShow: boolean): string =>
	isShow ? 'the file is there, and nothing is written over' : 'something of that name is there';
export const ADD_TO_IT = 'To add the list to it: the same line with --add. Else give another name.';
export const ANOTHER_NAME = 'Give another name.';
export const addAsked = (file: string): string => `${file} is there. Add the list to it? (y, n) `;
export const NOT_A_SHOW_TO_ADD = 'the file cannot be added to, since it cannot be read as a show';
export const CANNOT_ADD_HERE =
	'its songs and set are written on one line, which cannot be added to';
export const ADD_BY_HAND = 'Write them one entry a line, or make a new file.';
export const NOT_READ_AGAIN = 'what was written cannot be read again';
export const UNKNOWN_LIST_FORM = 'a list cannot be printed as this';
export const RACK_ELSEWHERE = 'this file includes others of its folder';
export const SAME_FOLDER = 'Write the new show into the same folder.';
export const notWritten = (cause: string): string => `this file could not be written: ${cause}`;
export const STANDARD_INPUT = 'standard input';
