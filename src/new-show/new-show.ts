// `new` by questions, as a reducer: a state and a key give the next state. Nothing here knows the disk, the clock or
// the terminal; what is to be kept is the list of answers.

import { cleanText } from '../base/clean-text.ts';
import { graphemes } from '../base/display-width.ts';
import { editLine, lineOf, lineText, type TextLine, typeInto } from '../keys/text-line.ts';
import * as words from '../words/new-show.ts';
import { answered } from './answer.ts';
import { whoGets } from './hands-answer.ts';
import { type Beginning, begun, type Making } from './making.ts';
import { TAKE_BACK } from './numbered.ts';
import { type Field, fieldQuestion, type Question, questionOf } from './question.ts';

/** What of a show half made outlives the program. */
export type Kept = { readonly answers: readonly string[]; readonly typed: string };

export type NewShow = {
	readonly beginning: Beginning;
	/** A show begun earlier that can be gone on with; null once that is answered. */
	readonly earlier: Kept | null;
	readonly answers: readonly string[];
	readonly making: Making;
	/** The draft before the last answer, so that what was added can be seen. */
	readonly before: Making;
	readonly line: TextLine;
	/** Which of the question's rows is picked. */
	readonly picked: number;
	/** A song taken hold of in the order: where it was. */
	readonly held: number | null;
	/** A field inside the question. */
	readonly field: Field | null;
	readonly message: string | null;
	/** `left`: by esc or from outside, all kept; `done`: to be written. */
	readonly end: 'left' | 'done' | null;
};

/** The first question, or whether to go on with what was begun earlier. */
export function startNewShow(beginning: Beginning, kept: Kept | null): NewShow {
	const making = begun(beginning);
	const isWorthIt = kept !== null && (kept.answers.length > 0 || kept.typed !== '');
	return {
		beginning,
		earlier: isWorthIt ? kept : null,
		answers: [],
		making,
		before: making,
		line: lineOf(''),
		picked: 0,
		held: null,
		field: null,
		message: null,
		end: null,
	};
}

/** What is to be kept now; null where that is what was kept before. */
export function keptOf({ earlier, answers, line, field }: NewShow): Kept | null {
	if (earlier !== null) return null;
	return { answers, typed: field === null ? lineText(line) : '' };
}

/** The show that these answers give, as far as they can be used. */
export function madeOf(
	beginning: Beginning,
	answers: readonly string[],
): {
	readonly making: Making;
	readonly before: Making;
	readonly used: readonly string[];
} {
	let making = begun(beginning);
	let before = making;
	const used: string[] = [];
	for (const answer of answers) {
		const next = answered(making, answer);
		if ('refused' in next) break;
		before = making;
		making = next.making;
		used.push(answer);
	}
	return { making, before, used };
}

/** The question as it is shown. */
export function asked(state: NewShow): Question {
	return state.field === null ? questionOf(state.making) : fieldQuestion(state.making, state.field);
}

/** The state after a key. */
export function press(state: NewShow, key: string): NewShow {
	const now: NewShow = { ...state, message: null };
	if (state.end !== null) return state;
	if (state.earlier !== null) return pressEarlier(now, state.earlier, key);
	if (key === 'esc') return pressEsc(now);
	if (now.field?.field === 'slot') return pressSlot(now, key);
	if (asked(now).isText) return pressText(now, key);
	const isBack = key.toLowerCase() === TAKE_BACK || key === 'backspace';
	if (isBack && now.held === null) return takeBack(now);
	if (now.making.place.ask === 'order') return pressOrder(now, key);
	if (now.making.place.ask === 'hands') return pressHands(now, key);
	if (now.making.place.ask === 'write')
		return key === 'enter' ? { ...now, end: 'done' } : nothing(now, key);
	return answer(now, key === 'enter' ? '' : key);
}

/** The state after text was pasted: as if it had been typed. */
export function paste(state: NewShow, text: string): NewShow {
	const isText = state.earlier === null && state.end === null && asked(state).isText;
	if (!isText) return { ...state, message: words.PASTE_NOWHERE };
	const room = Math.max(0, LONGEST_TEXT - lineText(state.line).length);
	const letters = graphemes(cleanText(text.trim())).slice(0, room);
	const isList = state.making.place.ask === 'song' && /\S\s*[\r\n]\s*\S/.test(text);
	const message = isList ? words.PASTED_LINES : null;
	return { ...state, message, line: typeInto(state.line, letters.join('')) };
}

const LONGEST_TEXT = 400;

function pressEarlier(state: NewShow, earlier: Kept, key: string): NewShow {
	if (key === 'esc') return { ...state, end: 'left' };
	if (key === 'n') return { ...state, earlier: null };
	if (key !== 'enter') return nothing(state, key);
	const { making, before, used } = madeOf(state.beginning, earlier.answers);
	return fresh({ ...state, earlier: null, answers: used, making, before }, earlier.typed);
}

function pressEsc(state: NewShow): NewShow {
	if (state.field !== null) return { ...state, field: null, line: lineOf('') };
	if (state.held !== null) return { ...state, held: null };
	return { ...state, end: 'left' };
}

/** A new question, its first row picked. */
function fresh(state: NewShow, typed = ''): NewShow {
	return { ...state, line: lineOf(typed), picked: 0, held: null, field: null };
}

function nothing(state: NewShow, key: string): NewShow {
	return { ...state, message: words.keyDoesNothing(cleanText(key)) };
}

/** The state with the answer, or with why it is none. */
function answer(state: NewShow, text: string): NewShow {
	const next = answered(state.making, text);
	if ('refused' in next) return { ...state, message: next.refused };
	const after: NewShow = {
		...state,
		answers: [...state.answers, text],
		making: next.making,
		before: state.making,
		message: next.says ?? null,
	};
	const isSame = samePlace(state.making, next.making);
	return isSame ? { ...after, line: lineOf(''), field: null, held: null } : fresh(after);
}

function samePlace({ place: one }: Making, { place: other }: Making): boolean {
	if (one.ask !== other.ask) return false;
	return one.ask !== 'hands' || (other.ask === 'hands' && one.song === other.song);
}

/** The last answer back in its question, to be typed anew or changed. */
function takeBack(state: NewShow): NewShow {
	const last = state.answers.at(-1);
	if (last === undefined) return { ...state, message: words.NOTHING_TO_TAKE_BACK };
	const { making, before, used } = madeOf(state.beginning, state.answers.slice(0, -1));
	const after: NewShow = { ...state, answers: used, making, before, message: words.TAKEN_BACK };
	const isSame = samePlace(state.making, making) && !questionOf(making).isText;
	if (isSame) return { ...after, field: null, held: null };
	// A slot was given by a key, not by text.
	const typed = questionOf(making).isText && !last.startsWith('slot ') ? last : '';
	return fresh(after, typed);
}

function pressText(state: NewShow, key: string): NewShow {
	const typed = lineText(state.line);
	if (key === 'enter') return enterText(state, typed);
	if (key === 'tab' && state.making.place.ask === 'instrument' && state.field === null)
		return { ...state, field: { field: 'slot' } };
	if (key === 'backspace' && typed === '')
		return state.field === null ? takeBack(state) : { ...state, field: null };
	const edited = editLine(state.line, key);
	if (edited) return { ...state, line: edited };
	const letter = key === 'space' ? ' ' : key;
	if (/^[a-z\d-]{2,}$/.test(letter)) return nothing(state, key);
	if (typed.length >= LONGEST_TEXT) return { ...state, message: words.TOO_MANY };
	return { ...state, line: typeInto(state.line, cleanText(letter)) };
}

function enterText(state: NewShow, typed: string): NewShow {
	const { field } = state;
	if (field?.field === 'tuned')
		return answer(state, `tuned ${field.player} ${typed.trim()}`.trim());
	if (field?.field !== 'interval') return answer(state, typed.trim());
	const length = typed.replace(/\s/g, '');
	return answer(state, `interval ${field.at} ${length}`.trim());
}

/** What was typed of a name stays while its slot is asked. */
function pressSlot(state: NewShow, key: string): NewShow {
	const { line } = state;
	const next = answer(state, `slot ${key}`);
	return next.answers === state.answers ? next : { ...next, line };
}

const upOrDown = (key: string): number => (key === 'up' ? -1 : key === 'down' ? 1 : 0);

function pressOrder(state: NewShow, key: string): NewShow {
	const { held } = state;
	const last = state.making.draft.set.length - 1;
	const picked = Math.min(state.picked, last);
	const to = Math.min(Math.max(0, picked + upOrDown(key)), last);
	if (held !== null) {
		if (key === 'enter') return { ...state, held: null };
		if (to === picked) return nothing(state, key);
		const next = answer(state, `move ${picked} ${to}`);
		const isMoved = next.answers !== state.answers;
		return { ...next, picked: isMoved ? to : picked, held };
	}
	if (upOrDown(key) !== 0) return { ...state, picked: to };
	switch (key.toLowerCase()) {
		case 'enter':
			return answer(state, '');
		case 'g':
			return { ...state, held: picked };
		case 'h':
			return answer(state, `encore ${picked}`);
		case 'k':
			return dropped(answer(state, `drop ${picked}`));
		case 'p':
			return { ...state, field: { field: 'interval', at: picked }, line: lineOf('') };
		default:
			return nothing(state, key);
	}
}

/** What is picked is still there. */
function dropped(state: NewShow): NewShow {
	const last = state.making.draft.set.length - 1;
	return { ...state, picked: Math.min(state.picked, last) };
}

function pressHands(state: NewShow, key: string): NewShow {
	const { draft } = state.making;
	const last = draft.players.length - 1;
	const player = draft.players[Math.min(state.picked, last)];
	if (upOrDown(key) !== 0)
		return { ...state, picked: Math.min(Math.max(0, state.picked + upOrDown(key)), last) };
	if (key === 'enter') return answer(state, '');
	if (player === undefined) return nothing(state, key);
	if (key === '-') return answer(state, `none ${player.id}`);
	if (key === '0') return answer(state, `keep ${player.id}`);
	if (key === '=')
		return { ...state, field: { field: 'tuned', player: player.id }, line: lineOf('') };
	const given = draft.instruments.find(({ slot }) => slot === key.toLowerCase());
	if (!given) return { ...state, message: words.emptySlotHere(cleanText(key)) };
	const id = whoGets(draft, given, player.id);
	const next = answer(state, `hand ${id} ${given.id}`);
	return {
		...next,
		picked: Math.max(
			0,
			draft.players.findIndex((one) => one.id === id),
		),
	};
}
