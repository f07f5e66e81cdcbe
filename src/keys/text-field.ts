// A prompt with a line of text in it: every press counts, space is a letter, and a draft is kept until
// it is entered. What the line is for is for those who ask.

import { ANSWERS, notTypedHere, TYPE_THEN_ENTER } from '../words/questions.ts';
import type { KeyContext, Outcome, Prompt } from './key-context.ts';
import type { PromptView } from './prompt-view.ts';
import { editLine, lineOf, lineText, type TextLine, typeInto } from './text-line.ts';

export type TextField = {
	readonly view: (text: string, context: KeyContext) => Partial<PromptView> & { title: string };
	/** What enter comes to. */
	readonly enter: (text: string, context: KeyContext) => Outcome;
	/** Keys other than text that the field takes, such as up and down in a list. */
	readonly also?: (key: string, text: string, context: KeyContext) => Outcome | null;
	/** False for a question that enter alone answers: until something is typed, space steps the show. */
	readonly isText?: boolean;
	/** Which keys are text here; all printable ones unless said. */
	readonly accepts?: (key: string) => boolean;
	/** By what its text is known when it is left unfinished; left out where it is not worth keeping. */
	readonly draft?: string;
};

const LONGEST_TEXT = 400;

/** A field with a line in it. */
export function textPrompt(field: TextField, line: TextLine = lineOf('')): Prompt {
	const accepts = field.accepts ?? (() => true);
	const text = lineText(line);
	// What was begun is not lost by waiting, and a digit typed twice in haste is two.
	const isText = (field.isText ?? true) || text !== '';
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
					: [{ key: 'esc', words: ANSWERS.keepForLater }],
			...field.view(text, context),
			field: line,
		}),
		press: (key, context) => {
			if (key === 'esc') return { kind: 'close' };
			if (key === 'enter') return field.enter(text, context);
			const also = field.also?.(key, text, context);
			if (also) return also;
			const edited = editLine(line, key);
			if (edited) return goOn(edited);
			if (!isText && (key === 'space' || key === 'pagedown')) return { kind: 'pass' };
			const typed = key === 'space' ? ' ' : key;
			// Named keys are longer words; anything else is one character as it was typed.
			if (/^[a-z\d-]{2,}$/.test(typed)) return { kind: 'say', words: TYPE_THEN_ENTER };
			if (!accepts(typed) || text.length >= LONGEST_TEXT)
				return { kind: 'say', words: notTypedHere(typed) };
			return goOn(typeInto(line, typed));
		},
	};
}

/** The prompt with what was typed into it when it was last left. */
export function withDraft(field: TextField, { draftOf }: KeyContext): Prompt {
	return textPrompt(field, lineOf(field.draft === undefined ? '' : draftOf(field.draft)));
}
