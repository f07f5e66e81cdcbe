// A player's cell in the trade's shorthand: which instrument, in which tuning, with a capo on which fret. What
// it names is not looked up here, since that takes the whole list.

import { INSTRUMENT_KINDS, type InstrumentKind } from '../tuning/kind.ts';
import { type Abbreviations, readTuning } from '../tuning/tuning.ts';
import { songOfCell } from './same-as.ts';

export type CellSaid =
	| { readonly kind: 'keeps' }
	| { readonly kind: 'none' }
	/** What the player has in another song of the list. */
	| { readonly kind: 'as'; readonly song: string }
	| {
			readonly kind: 'has';
			/** As written, for an instrument; null where the cell names none. */
			readonly name: string | null;
			readonly slot: string | null;
			readonly id: string | null;
			readonly instrumentKind: InstrumentKind | null;
			/** As written. */
			readonly tuning: string | null;
			/** Null where the cell says nothing of it. */
			readonly capo: number | null;
	  }
	| { readonly kind: 'unclear'; readonly why: CellWhy };

export type CellWhy =
	| 'own-word'
	| 'unknown-tuning'
	| 'two-ways'
	| 'capo-range'
	| 'extra-words'
	| 'too-long'
	| 'no-standard';

/** What the reading of a cell goes by. */
export type CellReader = {
	readonly kind: InstrumentKind;
	readonly abbreviations: Abbreviations;
	/** Whether this is the whole name or the slot of an instrument known from elsewhere. */
	readonly isKnown: (text: string) => boolean;
};

const KEEPS = /^(?:["″“”„]+|''|〃|ditto|dito|idem|do\.|same|keeps?|stays?|as above|=|\^)$/i;
const NONE = /^(?:[-–—−]+|none|no (?:guitar|gtr|bass|instrument)|nothing|tacet)$/i;
const DOUBT =
	/\?|\p{L}:\s.*[,;/]\s*\p{L}+:\s|(?:^|\s)(?:back to|swap|switch|change)(?=\s|$)|(?:^|\s)(?:or|maybe|oder|tb[ac])(?=\s|$)|>|→|(?:^|\s)(?:then|and|&|\+)\s/iu;
const NOTES = /(?:^|\s)((?:[A-G][#b]?-?\d[\s,]+){3,23}[A-G][#b]?-?\d)(?=\s|,|$)/i;
const CAPO =
	/(?:^|\s)(?:no (?:capo|cpo)|(?:c|cp|cpo|cap|capo|kapo|cejilla|capodastre|capotasto)\.?\s*(?:on\s+|at\s+|fret\s+)?(\d{1,2}|[ivx]{1,4})(?:st|nd|rd|th)?(?:\s+fret)?|(\d{1,2})(?:st|nd|rd|th)\s+fret(?:\s+capo)?)(?=\s|$)/i;
const SLOT = /^(?:#|(?:slot|no\.?|gtr|guitar)\s+)?([1-9])(?=\s|$)/i;
const WITH_ID = /^(.*?)\s*\[([^[\]]+)\]\s*(.*)$/su;
const ROMAN = ['i', 'ii', 'iii', 'iv', 'v', 'vi', 'vii', 'viii', 'ix', 'x', 'xi', 'xii'];
const HIGHEST_CAPO = 12;
/** No shorthand is longer; this program writes names as long as the file may have them. */
const LONGEST = 120;
const LONGEST_EXACT = 1000;
/** Words that a tuning's name has at the most. */
const MOST_WORDS = 8;
/** Names of tunings on some kind that anybody else takes for a name of an instrument. */
const LIKE_NAMES = /^(?:solo|lute|bari|baritone|sawmill|standard)$/i;

/** What the cell says. A name in front of `[id]` is taken as it stands: so this program writes it. */
export function readCell(text: string, reader: CellReader): CellSaid {
	const said = plain(text);
	if (said === '' || KEEPS.test(said)) return { kind: 'keeps' };
	if (NONE.test(said)) return { kind: 'none' };
	const song = songOfCell(said);
	if (song !== null) return { kind: 'as', song };
	if (said.length > LONGEST_EXACT) return { kind: 'unclear', why: 'too-long' };
	const exact = WITH_ID.exec(text.trim());
	if (exact) return readExact(exact, reader);
	if (said.length > LONGEST) return { kind: 'unclear', why: 'too-long' };
	if (reader.isKnown(said)) {
		const isTwo = tuningIn(said, reader) !== null || CAPO.test(said);
		return isTwo ? { kind: 'unclear', why: 'two-ways' } : has({ name: said });
	}
	// Cut, left out or not played: each of them to somebody.
	if (DOUBT.test(said) || /^x$/i.test(said)) return { kind: 'unclear', why: 'two-ways' };
	return readWords(said.replace(/[(),;:|/[\]]+|\s[-–—]\s/g, ' ').trim(), reader);
}

/** Words beside others that read as a tuning or a capo, with what is left; a single note or a word in small letters is part of many a title. */
export function shorthandIn(
	text: string,
	reader: CellReader,
): { readonly piece: string; readonly rest: string } | null {
	const said = plain(text).replace(/[(),;:|/[\]!]+|\s[-–—+]\s/g, ' ');
	const capo = CAPO.exec(said);
	const words = (capo ? cut(said, capo) : said).split(' ').filter((word) => word !== '');
	const run = tuningRun(words, reader);
	const named = run === null ? '' : words.slice(run.from, run.to).join(' ');
	const isBeside = run !== null && run.to - run.from < words.length;
	const tuning = isBeside && /\s|[A-Z].*[A-Z]|[½↓]/.test(named) ? [named] : [];
	const pieces = [...tuning, ...(capo ? [capo[0].trim()] : [])];
	if (pieces.length === 0) return null;
	return { piece: pieces.join(' '), rest: pieces.reduce(without, plain(text)) };
}

/** The text without this piece of it and the signs that set it apart; all of it where nothing would be left. */
function without(text: string, piece: string): string {
	const at = text.lastIndexOf(piece);
	const before = text.slice(0, Math.max(0, at)).replace(/[\s,;|/([–—-]+$/u, '');
	const after = text.slice(at + piece.length).replace(/^[\s,;|/)\]–—-]+/u, '');
	const left = `${before} ${after}`.trim();
	return at === -1 || left === '' ? text : left;
}

/** Words of a tuning that is none of the known ones, and not of an instrument's name. */
const LIKE_TUNINGS =
	/(?<![\p{L}\d])(?:dropp?|dropped|double|open|offen|ouvert|abierto|aperto|öppen|standard|std|tuned|tuning|capo|kapo|cejilla|step|steps|down|fret)(?![\p{L}\d])|[½↓]/iu;
const NOTE = /^[A-G][#b]?$/;

/** The text with one sign for each thing, on one line. */
function plain(text: string): string {
	return text
		.normalize('NFC')
		.replaceAll('♭', 'b')
		.replaceAll('♯', '#')
		.replace(/(?<!\d)1\/2/g, '½')
		.replace(/[’´`]/g, "'")
		.replace(/\s+/g, ' ')
		.trim();
}

export type Has = Extract<CellSaid, { kind: 'has' }>;

/** A cell that says nothing of any instrument. */
export const NOTHING_SAID: Has = {
	...{ kind: 'has', name: null, slot: null, id: null, instrumentKind: null, tuning: null },
	capo: null,
};

function has(said: Partial<Omit<Has, 'kind'>>): Has {
	return { ...NOTHING_SAID, ...said };
}

function readExact(found: RegExpExecArray, reader: CellReader): CellSaid {
	const [, name = '', bracket = '', rest = ''] = found;
	const [first = '', second] = bracket.split(',').map((part) => part.trim());
	const kindOf = (word: string | undefined) =>
		INSTRUMENT_KINDS.find((kind) => kind === word) ?? null;
	const capo = CAPO.exec(rest);
	const fret = capo ? fretOf(capo) : 0;
	if (fret === null) return { kind: 'unclear', why: 'capo-range' };
	const tuning = (capo ? rest.slice(0, capo.index) : rest).trim();
	if (tuning !== '' && !readsAsTuning(tuning, reader))
		return { kind: 'unclear', why: 'extra-words' };
	const isKindAlone = second === undefined && kindOf(first) !== null && name === '';
	return has({
		name: name === '' ? null : name,
		id: isKindAlone ? null : first,
		instrumentKind: kindOf(isKindAlone ? first : second),
		tuning: tuning === '' ? null : tuning,
		capo: fret,
	});
}

function fretOf([, digits, ordinal]: RegExpExecArray): number | null {
	const word = (digits ?? ordinal)?.toLowerCase();
	if (word === undefined) return 0;
	const fret = /\d/.test(word) ? Number(word) : ROMAN.indexOf(word) + 1 || Number.NaN;
	return fret >= 0 && fret <= HIGHEST_CAPO ? fret : null;
}

function readWords(said: string, reader: CellReader): CellSaid {
	const notes = NOTES.exec(said);
	const withoutNotes = notes ? cut(said, notes) : said;
	const capo = CAPO.exec(withoutNotes);
	const fret = capo ? fretOf(capo) : null;
	if (capo && fret === null) return { kind: 'unclear', why: 'capo-range' };
	const words = (capo ? cut(withoutNotes, capo) : withoutNotes)
		.split(' ')
		.filter((word) => word !== '');
	const [slot, named] = slotIn(words, reader);
	const run = notes ? null : tuningRun(named, reader);
	const before = named.slice(0, run?.from ?? named.length).join(' ');
	const after = run ? named.slice(run.to).join(' ') : '';
	if (before !== '' && after !== '') return { kind: 'unclear', why: 'extra-words' };
	const name = before || after || null;
	const tuning = notes?.[1] ?? run?.text ?? null;
	// The same one in another tuning, or the same tuning: both are meant.
	if (name !== null && KEEPS.test(name)) return { kind: 'unclear', why: 'two-ways' };
	if (name !== null && LIKE_TUNINGS.test(name)) return { kind: 'unclear', why: 'extra-words' };
	if (name !== null && tuning === null && NOTE.test(name))
		return { kind: 'unclear', why: 'no-standard' };
	return has({ name, slot, tuning, capo: fret });
}

function cut(text: string, { index, 0: piece }: RegExpExecArray): string {
	return `${text.slice(0, index)} ${text.slice(index + piece.length)}`.trim();
}

function slotIn(
	words: readonly string[],
	reader: CellReader,
): readonly [string | null, readonly string[]] {
	const text = words.join(' ');
	const found = SLOT.exec(text);
	if (found) {
		const rest = text.slice(found[0].length).trim();
		// `1 step down` is a tuning, `1` a slot.
		if (tuningIn(text, reader) === null) {
			return [found[1] ?? null, rest === '' ? [] : rest.split(' ')];
		}
	}
	const [first = '', ...others] = words;
	if (first.length === 1 && reader.isKnown(first) && others.length > 0) return [first, others];
	return [null, words];
}

type Run = { readonly from: number; readonly to: number; readonly text: string };

/** The longest run of words that is a tuning; of equally long ones the last, since the name comes first. */
function tuningRun(words: readonly string[], reader: CellReader): Run | null {
	for (let count = Math.min(words.length, MOST_WORDS); count > 0; count -= 1) {
		for (let from = words.length - count; from >= 0; from -= 1) {
			const text = words.slice(from, from + count).join(' ');
			const rest = [...words.slice(0, from), ...words.slice(from + count)].join(' ');
			if (rest === '' && LIKE_NAMES.test(text) && !/^standard$/i.test(text)) continue;
			const tuning = tuningIn(text, reader);
			if (tuning !== null) return { from, to: from + count, text: tuning };
		}
	}
	return null;
}

/** Ways to say it that the tables of tunings do not have; common practice, no source. */
const OTHER_WORDS: readonly (readonly [RegExp, string])[] = [
	[/^(?:reg|regular|norm|normal|std\.?)$/i, 'standard'],
	[/^(?:[-–−]\s*)?(?:½|half)[- ]?(?:step|tone)?$/i, '½-step-down'],
	[/^(?:tuned )?down (?:a )?(?:½|half)[- ]?(?:step|tone)?$/i, '½-step-down'],
	[/^(?:double|dbl\.?) ?(?:dropp?(?:ed)?|dr\.?) ?d$/i, 'ddd'],
	[/^(?:whole|full)[- ]?(?:step|tone)$/i, 'whole-step-down'],
];

/** Notes as they are called where C is do. */
const NOTE_WORDS: Readonly<Record<string, string>> = {
	...{ do: 'C', ré: 'D', re: 'D', mi: 'E', fa: 'F', sol: 'G', la: 'A', si: 'B' },
};
const A_NOTE = '([a-g][#b]?|do|ré|re|mi|fa|sol|la|si)';
const OPEN_WORDS = '(?:open|offen|offenes|ouvert|abierto|abierta|aperto|aperta|öppen|åpen|åben)';
const OPEN = new RegExp(`^(?:${OPEN_WORDS}\\s+${A_NOTE}|${A_NOTE}\\s+${OPEN_WORDS})$`, 'iu');
const DROP = new RegExp(
	`^(?:(?:dropp?(?:ed)?|dr\\.?)\\s*${A_NOTE}|${A_NOTE}\\s+dropp?(?:ed)?)$`,
	'iu',
);
const STANDARD = /^(.+?)[ -](?:tuning|tuned)$/iu;

/** The text in the words that the tables have. */
function tableWords(text: string): string {
	const bare = STANDARD.exec(text)?.[1] ?? text;
	for (const [pattern, name] of [
		[OPEN, 'open'],
		[DROP, 'drop'],
	] as const) {
		const found = pattern.exec(bare);
		const note = found?.[1] ?? found?.[2];
		if (note !== undefined) return `${name} ${NOTE_WORDS[note.toLowerCase()] ?? note}`;
	}
	return OTHER_WORDS.find(([pattern]) => pattern.test(bare))?.[1] ?? bare;
}

/** The text as a tuning's name where it is one on this kind or on some other, else null. */
function tuningIn(text: string, reader: CellReader): string | null {
	const words = tableWords(text);
	if (/^[A-G][#b]?$/i.test(words)) {
		const standard = `${words} standard`;
		if (reads(standard, reader.kind, reader)) return standard;
		return /^b$/i.test(words) ? standard : null;
	}
	if (reads(words, reader.kind, reader)) return words;
	if (LIKE_NAMES.test(words)) return null;
	return readsAsTuning(words, reader) ? words : null;
}

function readsAsTuning(text: string, reader: CellReader): boolean {
	// A kind of any number of strings takes a single note for a tuning, and A1 is an instrument's name.
	const isNote = /^\S+$/.test(text);
	return INSTRUMENT_KINDS.some(
		(kind) => (kind !== 'other' || !isNote) && reads(text, kind, reader),
	);
}

function reads(text: string, kind: InstrumentKind, { abbreviations }: CellReader): boolean {
	return readTuning(text, kind, abbreviations).ok;
}
