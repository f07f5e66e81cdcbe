// The prompts that ask for a slot, a player or a choice. Each is a small reducer: a key in, an outcome
// out. Text and list fields stand in text-prompts.ts.

import { displayWidth, fitWidth } from '../base/display-width.ts';
import type { Session } from '../session/session.ts';
import type { Instrument, Player } from '../showfile/show.ts';
import { shownInstrument } from '../showfile/shown-names.ts';
import { SOLDER } from '../words/cautions.ts';
import { FAULTS } from '../words/incident-kinds.ts';
import { sideBySide } from '../words/line-columns.ts';
import {
	ANSWERS,
	emptySlot,
	faultTitle,
	noSuchFault,
	noSuchPlayer,
	notASlot,
	QUIT_TITLE,
	SEND_BOARDS_TITLE,
} from '../words/questions.ts';
import type { KeyContext, Outcome, Prompt } from './key-context.ts';
import type { KeyWords, PromptView } from './prompt-view.ts';
import { instrumentAtSlot } from './rack-slots.ts';

const CLOSE: Outcome = { kind: 'close' };

/** A prompt of single keys: esc leaves it, space steps the show. */
export function choicePrompt(
	view: (context: KeyContext) => Partial<PromptView> & { title: string },
	press: (key: string, context: KeyContext) => Outcome,
): Prompt {
	return {
		isText: false,
		isLasting: false,
		view: (context) => {
			const seen = view(context);
			return { lines: [], field: null, ...seen, choices: withWayOut(seen.choices ?? []) };
		},
		press: (key, context) => {
			if (key === 'esc') return CLOSE;
			if (key === 'space' || key === 'pagedown') return { kind: 'pass' };
			return press(key, context);
		},
	};
}

/** Columns of the narrowest screen that is complete. */
const COLUMNS = 80;
const LEAST_WORDS = 3;

/** The keys that answer with the one that leaves at their end, the longest words cut until all are in sight. */
export function withWayOut(choices: readonly KeyWords[]): readonly KeyWords[] {
	const isSaid = choices.some(({ key }) => key === 'esc');
	const all = [...choices, ...(isSaid ? [] : [{ key: 'esc', words: ANSWERS.cancel }])];
	const widthOf = (list: readonly KeyWords[]) =>
		list.reduce((sum, { key, words }) => sum + displayWidth(`${key} ${words}`) + 2, -2);
	let most = Math.max(...all.map(({ words }) => displayWidth(words)));
	let cut: readonly KeyWords[] = all;
	while (widthOf(cut) > COLUMNS && most > LEAST_WORDS) {
		most -= 1;
		cut = all.map((one) =>
			one.key === 'esc' || displayWidth(one.words) <= most
				? one
				: { ...one, words: fitWidth(one.words, most) },
		);
	}
	return cut;
}

/** Says that no instrument answers to this key. */
export const nothingThere = (key: string): Outcome => ({
	kind: 'say',
	words: key.length > 1 ? notASlot(key) : emptySlot(key),
});

/** Keys of a prompt with a meaning of their own: what the footer says, and what each comes to. */
export type OtherKeys = Readonly<
	Record<
		string,
		{
			readonly words: string | ((context: KeyContext) => string);
			readonly outcome: (context: KeyContext) => Outcome;
		}
	>
>;

function wordsOf(others: OtherKeys, context: KeyContext): readonly KeyWords[] {
	return Object.entries(others).map(([key, { words }]) => ({
		key,
		words: typeof words === 'string' ? words : words(context),
	}));
}

type Asked = { readonly title: string; readonly lines: readonly string[] };

/**
 * Asks for a slot, then goes on with the instrument there. `asked` as a function: what is asked may change while it is
 * read. `others` are keys with a meaning of their own.
 */
export function slotPrompt(
	asked: string | Asked | ((context: KeyContext) => Asked),
	chosen: (instrument: Instrument, context: KeyContext) => Outcome,
	others: OtherKeys = {},
): Prompt {
	return choicePrompt(
		(context) => ({
			...(typeof asked === 'string'
				? { title: asked }
				: typeof asked === 'function'
					? asked(context)
					: asked),
			choices: wordsOf(others, context),
		}),
		(key, context) => {
			const other = others[key.toLowerCase()];
			if (other) return other.outcome(context);
			const instrument = instrumentAtSlot(context.session, key);
			return instrument ? chosen(instrument, context) : nothingThere(key);
		},
	);
}

/** The player whom this key names, if one of these. */
export function playerOfKey(
	session: Session,
	key: string,
	among: readonly string[],
): Player | null {
	return (
		session.show.players.find((one) => one.key === key.toLowerCase() && among.includes(one.id)) ??
		null
	);
}

type OfPlayer = {
	readonly among: readonly string[];
	readonly goOn: (player: string) => Outcome;
	/** What to know of them before answering. */
	readonly lines?: readonly string[];
};

/** Asks which player, unless only one comes into question. */
export function withPlayer(context: KeyContext, title: string, ask: OfPlayer): Outcome {
	const [only, ...more] = ask.among;
	return only !== undefined && more.length === 0
		? ask.goOn(only)
		: { kind: 'prompt', prompt: playerPrompt(context, title, ask) };
}

/** Asks which player. `others` are keys with a meaning of their own. */
export function playerPrompt(
	{ session }: KeyContext,
	title: string,
	{ among, goOn, lines = [], others = {} }: OfPlayer & { readonly others?: OtherKeys },
): Prompt {
	const players = session.show.players.filter((one) => among.includes(one.id));
	return choicePrompt(
		(context) => ({
			title,
			lines,
			choices: [
				...players.map((one) => ({ key: one.key, words: one.name })),
				...wordsOf(others, context),
			],
		}),
		(key, now) => {
			const other = others[key.toLowerCase()];
			if (other) return other.outcome(now);
			const player = playerOfKey(now.session, key, among);
			return player ? goOn(player.id) : { kind: 'say', words: noSuchPlayer(key) };
		},
	);
}

/** Faulty or out: after the slot, a letter says what is wrong; enter only puts it out. */
export function faultPrompt(instrument: Instrument, others: OtherKeys = {}): Prompt {
	return choicePrompt(
		(context) => ({
			title: faultTitle(shownInstrument(context.session.show, instrument.id)),
			lines: [...sideBySide(FAULTS.map(({ letter, words }) => `${letter} ${words}`)), SOLDER],
			choices: [{ key: 'enter', words: ANSWERS.outTonight }, ...wordsOf(others, context)],
		}),
		(key, context) => {
			const other = others[key];
			if (other) return other.outcome(context);
			const fault = FAULTS.find(({ letter }) => letter === key.toLowerCase());
			if (key !== 'enter' && !fault) return { kind: 'say', words: noSuchFault(key) };
			return {
				kind: 'command',
				command: { do: 'put-aside', instrument: instrument.id, fault: fault?.kind ?? null },
			};
		},
	);
}

/** After a resume: boards may have been switched by foot meanwhile. It waits for its answer, or for a step. */
export function sendBoardsPrompt(): Prompt {
	const asked = choicePrompt(
		() => ({
			title: SEND_BOARDS_TITLE,
			choices: [
				{ key: 'enter', words: ANSWERS.send },
				{ key: 'esc', words: ANSWERS.leaveBoards },
			],
		}),
		(key) => (key === 'enter' ? { kind: 'send-boards' } : { kind: 'pass' }),
	);
	return { ...asked, isLasting: true };
}

/** Leaving: the choice that stays is first. */
export function leavePrompt(): Prompt {
	return choicePrompt(
		({ unsavedSteps }) => ({
			title: QUIT_TITLE,
			choices: [
				{
					key: 'enter',
					words: unsavedSteps > 0 ? ANSWERS.quitUnsaved(unsavedSteps) : ANSWERS.quit,
				},
				{ key: 'e', words: ANSWERS.closeShow },
				{ key: 'esc', words: ANSWERS.stay },
			],
		}),
		(key) => {
			if (key === 'enter') return { kind: 'leave' };
			if (key.toLowerCase() === 'e') return { kind: 'command', command: { do: 'end-show' } };
			return CLOSE;
		},
	);
}
