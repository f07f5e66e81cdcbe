// The prompts with a text or list field: every press counts, space is a letter, and a draft is kept
// until it is entered.

import { wrapWords } from '../base/wrap-words.ts';
import type { Session } from '../session/session.ts';
import { warmthWords } from '../session/warmth-words.ts';
import type { Instrument, Song } from '../showfile/show.ts';
import { CAPO_HIGHEST } from '../tuning/capo.ts';
import { KINDS } from '../tuning/kind.ts';
import { readTuning } from '../tuning/tuning.ts';
import { INCIDENT_KINDS } from './incident-kinds.ts';
import type { KeyContext, Outcome, Prompt } from './key-context.ts';
import { LINE_COLUMNS } from './line-columns.ts';
import type { PromptView } from './prompt-view.ts';
import { editLine, lineOf, lineText, type TextLine, typeInto } from './text-line.ts';

type TextField = {
	readonly view: (text: string, context: KeyContext) => Partial<PromptView> & { title: string };
	/** What enter comes to. */
	readonly enter: (text: string, context: KeyContext) => Outcome;
	/** Keys other than text that the field takes, such as up and down in a list. */
	readonly also?: (key: string, text: string) => Outcome | null;
	readonly isText?: boolean;
	/** Which keys are text here; all printable ones unless said. */
	readonly accepts?: (key: string) => boolean;
	/** By what its text is known when it is left unfinished; left out where it is not worth keeping. */
	readonly draft?: string;
};

const LONGEST_TEXT = 400;

/** A field with a line in it. */
function textPrompt(field: TextField, line: TextLine = lineOf('')): Prompt {
	const isText = field.isText ?? true;
	const accepts = field.accepts ?? (() => true);
	const text = lineText(line);
	const goOn = (next: TextLine): Outcome => ({ kind: 'prompt', prompt: textPrompt(field, next) });
	return {
		isText,
		isLasting: false,
		...(field.draft === undefined ? {} : { draft: { id: field.draft, text } }),
		view: (context) => ({
			lines: [],
			choices:
				field.draft === undefined || text === ''
					? []
					: [{ key: 'esc', words: 'keep it for later' }],
			...field.view(text, context),
			field: line,
		}),
		press: (key, context) => {
			if (key === 'esc') return { kind: 'close' };
			if (key === 'enter') return field.enter(text, context);
			const also = field.also?.(key, text);
			if (also) return also;
			const edited = editLine(line, key);
			if (edited) return goOn(edited);
			if (!isText && (key === 'space' || key === 'pagedown')) return { kind: 'pass' };
			const typed = key === 'space' ? ' ' : key;
			// Named keys are longer words; anything else is one character as it was typed.
			if (/^[a-z\d-]{2,}$/.test(typed))
				return { kind: 'say', words: 'Type, then enter; esc leaves.' };
			if (!accepts(typed) || text.length >= LONGEST_TEXT)
				return { kind: 'say', words: `${typed} does not belong here.` };
			return goOn(typeInto(line, typed));
		},
	};
}

/** The prompt with what was typed into it when it was last left. */
function withDraft(field: TextField, { draftOf }: KeyContext): Prompt {
	return textPrompt(field, lineOf(field.draft === undefined ? '' : draftOf(field.draft)));
}

/** A memo in free words. */
export function memoPrompt(context: KeyContext): Prompt {
	return withDraft(
		{
			draft: 'memo',
			view: () => ({ title: 'Memo, then enter' }),
			enter: (text) => ({ kind: 'command', command: { do: 'write-memo', words: text } }),
		},
		context,
	);
}

/** The words that the log is narrowed to; none shows all of it. */
export function narrowPrompt({ narrowedTo }: KeyContext): Prompt {
	return textPrompt(
		{
			view: () => ({
				title: 'Only lines with these words, then enter',
				lines: ['A title, a name, a slot, break, ready, memo; nothing shows all.'],
			}),
			enter: (text) => ({ kind: 'narrow', words: text.trim() }),
		},
		lineOf(narrowedTo),
	);
}

/**
 * Reads "3", "3 b", "b at the saddle", "battery": a digit is the string, a letter standing alone or the
 * whole of a kind's word is the kind, the rest words.
 */
export function readIncidentText(text: string): {
	string: number | null;
	kind: string | null;
	words: string;
} {
	const [, digit, afterDigit = ''] = /^\s*(\d)?\s*(.*)$/s.exec(text) ?? [];
	const [, first = '', afterFirst = ''] = /^(\p{L}+)(?:\s+(.*))?$/su.exec(afterDigit) ?? [];
	const named = first.toLowerCase();
	const kind =
		INCIDENT_KINDS.find(({ letter, words }) => letter === named || words === named)?.kind ?? null;
	return {
		string: digit === undefined ? null : Number(digit),
		kind,
		words: (kind === null ? afterDigit : afterFirst).trim(),
	};
}

/** Every kind with its letter, on lines that even a small screen has room for. */
const KINDS_A_LINE = 5;
const KIND_LINES: readonly string[] = Array.from(
	{ length: Math.ceil(INCIDENT_KINDS.length / KINDS_A_LINE) },
	(_, line) =>
		INCIDENT_KINDS.slice(line * KINDS_A_LINE, (line + 1) * KINDS_A_LINE)
			.map(({ letter, words }) => `${letter} ${words}`)
			.join('   '),
);

/** More about the last incident. */
export function describePrompt(context: KeyContext): Prompt {
	const last = context.session.incidents.at(-1)?.id ?? '';
	return withDraft(
		{
			draft: `incident ${last}`,
			view: () => ({
				title: `Incident ${last}: string by digit, kind by letter, then words`,
				lines: KIND_LINES,
			}),
			enter: (text) => ({
				kind: 'command',
				command: { do: 'describe-incident', ...readIncidentText(text) },
			}),
		},
		context,
	);
}

/** The tuning or capo of an instrument as it really is: a fret, or a tuning's name or notes. */
export function asItIsPrompt(instrument: Instrument): Prompt {
	return textPrompt({
		view: (_text, { session }) => {
			const state = session.instruments[instrument.id];
			return {
				title: `${instrument.name} is in ${state?.context.tuning.name}, capo ${state?.context.capo}; really: a fret or a tuning, then enter`,
			};
		},
		enter: (text, { session }) => {
			const typed = text.trim();
			const correct = { do: 'correct-instrument', instrument: instrument.id } as const;
			if (/^\d{1,2}$/.test(typed)) {
				const capo = Number(typed);
				if (capo > 0 && !KINDS[instrument.kind].canTakeCapo)
					return { kind: 'say', words: `${instrument.name} takes no capo.` };
				if (capo > CAPO_HIGHEST + 5)
					return { kind: 'say', words: 'A capo goes no higher than fret 12.' };
				return { kind: 'command', command: { ...correct, tuning: null, capo } };
			}
			const reading = readTuning(typed, instrument.kind, session.show.abbreviations);
			return reading.ok
				? { kind: 'command', command: { ...correct, tuning: reading.tuning, capo: null } }
				: {
						kind: 'say',
						words: `${typed === '' ? 'Nothing' : typed} is no tuning of ${instrument.name}; there are ${reading.expected}.`,
					};
		},
	});
}

function celsiusOf(text: string): number | null {
	return text === '' ? null : Number(text.replace(',', '.'));
}

/** Everything is to be checked again; the stage's temperature if wished. */
export function doubtAllPrompt(): Prompt {
	return textPrompt({
		isText: false,
		accepts: (key) => /[-\d.,]/.test(key),
		view: (text, { session }) => {
			const words = warmthWords(session, celsiusOf(text));
			return {
				title: 'Check everything on the rack again: enter (temperature in °C first, if known)',
				lines: words === null ? [] : wrapWords(words, LINE_COLUMNS),
			};
		},
		enter: (text) => {
			const celsius = celsiusOf(text);
			if (celsius !== null && !(celsius >= -40 && celsius <= 60)) {
				return { kind: 'say', words: 'The temperature is in °C, from -40 to 60.' };
			}
			return { kind: 'command', command: { do: 'doubt-all', celsius } };
		},
	});
}

/** Songs whose title or id begins with, has a word that begins with, or contains what was typed; in that order. */
export function matchingSongs(session: Session, typed: string): readonly Song[] {
	const wanted = typed.trim().toLowerCase();
	const rank = (song: Song): number => {
		const title = song.title.toLowerCase();
		if (title.startsWith(wanted) || song.id.toLowerCase().startsWith(wanted)) return 0;
		if (title.split(/\s+/).some((word) => word.startsWith(wanted))) return 1;
		return title.includes(wanted) || song.id.toLowerCase().includes(wanted) ? 2 : 3;
	};
	return session.show.songs
		.map((song) => ({ song, rank: rank(song) }))
		.filter((one) => one.rank < 3)
		.sort((a, b) => a.rank - b.rank)
		.map(({ song }) => song);
}

const SHOWN_SONGS = 5;
const NOTHING_SAID: Pick<PromptView, 'lines' | 'tonight'> = { lines: [] };
const NO_SONG = 'No song of the catalogue has that in its title.';

/** What choosing a song is for. */
type SongAsk = {
	readonly title: (context: KeyContext) => string;
	/** What the song would mean; asked once something was typed or picked. */
	readonly about: (song: Song, context: KeyContext) => Pick<PromptView, 'lines' | 'tonight'>;
	readonly chosen: (song: Song, context: KeyContext) => Outcome;
	/** Keys of this question's own; gets what was typed and picked so far. */
	readonly also?: (key: string, at: SongField) => Outcome | null;
};

type SongField = { readonly picked: number; readonly text: string };

/** A song by letters that narrow the list; up and down pick. */
export function songPrompt(
	ask: SongAsk,
	{ picked, text }: SongField = { picked: 0, text: '' },
): Prompt {
	const chosenOf = (songs: readonly Song[]) => songs[Math.min(picked, songs.length - 1)];
	const pick = (by: number, typed: string): Outcome => ({
		kind: 'prompt',
		prompt: songPrompt(ask, { picked: Math.max(0, picked + by), text: typed }),
	});
	const field: TextField = {
		view: (typed, context) => {
			const songs = matchingSongs(context.session, typed);
			const chosen = chosenOf(songs);
			const first = Math.max(0, Math.min(picked, songs.length - 1) - SHOWN_SONGS + 1);
			const isSaid = typed.trim() !== '' || picked > 0;
			const about = chosen && isSaid ? ask.about(chosen, context) : NOTHING_SAID;
			return {
				...about,
				title: ask.title(context),
				lines: [
					...songs
						.slice(first, first + SHOWN_SONGS)
						.map((song) => `${song === chosen ? '>' : ' '} ${song.title}`),
					...about.lines,
					...(songs.length === 0 ? [NO_SONG] : []),
				],
			};
		},
		also: (key, typed) => {
			if (key === 'up') return pick(-1, typed);
			if (key === 'down') return pick(1, typed);
			return ask.also?.(key, { picked, text: typed }) ?? null;
		},
		enter: (typed, context) => {
			const song = chosenOf(matchingSongs(context.session, typed));
			return song ? ask.chosen(song, context) : { kind: 'say', words: NO_SONG };
		},
	};
	return textPrompt(field, lineOf(text));
}

/** Jump: any song becomes the next, and what would change is shown while typing. */
export function jumpPrompt(): Prompt {
	return songPrompt({
		title: () => 'Next song: letters, up and down, enter',
		about: (song, { previewOf }) => ({ lines: previewOf(song.id) }),
		chosen: (song) => ({ kind: 'command', command: { do: 'choose-next', song: song.id } }),
	});
}
