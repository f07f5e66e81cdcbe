// What can be answered to a question about a set list by one figure, and what each answer comes to.

import { type Answers, answerKey, isTwoWays, possiblePlayers, type RowAnswer } from './answers.ts';
import type { Asked, Rack } from './list-reading.ts';
import type { ListPlayer, SetList } from './list-row.ts';

export type Choice =
	| { readonly means: 'title' | 'length' | 'tempo' | 'song' | 'interval' | 'heading' | 'notes' }
	| { readonly means: 'hands'; readonly player: ListPlayer; readonly piece: string }
	/** What it is near to. */
	| { readonly means: 'near'; readonly name: string }
	/** A mark, wherever it is a whole cell. */
	| { readonly means: 'mark'; readonly mark: string; readonly as: 'none' | 'keeps' }
	/** A word of the act's own for a tuning, which is asked next. */
	| { readonly means: 'tuning'; readonly word: string }
	| { readonly means: 'instrument'; readonly name: string };

/** The choices, in the order in which they are numbered from 1; none where a line must be typed. */
export function choicesOf(asked: Asked, list: SetList, rack: Rack): readonly Choice[] {
	const { near, word } = asked;
	const hands = (): readonly Choice[] =>
		possiblePlayers(list, rack).map((player) => ({
			means: 'hands',
			player,
			piece: pieceOf(asked, list),
		}));
	const own: readonly Choice[] =
		word === null
			? []
			: [
					{ means: 'tuning', word: word.unknown },
					{ means: 'instrument', name: word.whole },
				];
	switch (asked.why) {
		case 'length-or-title':
			return [{ means: 'length' }, { means: 'title' }, { means: 'tempo' }];
		case 'interval-or-song':
			return [{ means: 'interval' }, { means: 'song' }];
		case 'heading-or-song':
		case 'alone':
			return [{ means: 'heading' }, { means: 'song' }];
		case 'which-player':
			return [...hands(), { means: 'notes' }];
		case 'shorthand-in-title':
			return [{ means: 'title' }, ...hands()];
		case 'unknown-tuning':
			return own.filter(({ means }) => means === 'tuning');
		case 'two-ways':
			if (MARK.test(asked.text)) {
				const mark = asked.text;
				return [
					{ means: 'mark', mark, as: 'none' },
					{ means: 'mark', mark, as: 'keeps' },
				];
			}
			return own;
		default:
			return [...(near === null ? [] : [{ means: 'near', name: near } as const]), ...own];
	}
}

/** Cut, left out or not played. */
const MARK = /^x$/i;

function pieceOf({ row, text }: Asked, { rows }: SetList): string {
	const found = rows.find((one) => one.kind === 'song' && one.row === row && one.title === text);
	return found?.kind === 'song' ? (found.doubt?.piece ?? '') : '';
}

/** The answers with what a word of the act's own means. */
export function taught(answers: Answers, word: string, tuning: string): Answers {
	return { ...answers, abbreviations: { ...answers.abbreviations, [word]: tuning } };
}

/** The answers with this choice among them. */
export function chosen(
	answers: Answers,
	asked: Asked,
	choice: Exclude<Choice, { means: 'tuning' }>,
): Answers {
	const key = answerKey(asked);
	switch (choice.means) {
		case 'instrument':
			return { ...answers, instruments: [...answers.instruments, choice.name] };
		case 'mark': {
			const cell = choice.as === 'none' ? '-' : '=';
			return { ...answers, marks: new Map(answers.marks).set(choice.mark.toLowerCase(), cell) };
		}
		case 'near': {
			const text = asked.text.replace(asked.word?.whole ?? asked.text, choice.name);
			return typed(answers, asked, text);
		}
		default:
			return { ...answers, rows: new Map(answers.rows).set(key, rowAnswer(choice, asked)) };
	}
}

function rowAnswer(choice: Exclude<Choice, { means: 'tuning' }>, asked: Asked): RowAnswer {
	switch (choice.means) {
		case 'hands':
			return { is: 'hands', player: choice.player };
		case 'tempo':
			return { is: 'tempo' };
		case 'length':
		case 'interval':
			return { is: 'otherwise' };
		// What stands alone beside the titles was taken for a heading, what is titled for a song.
		case 'heading':
			return { is: asked.why === 'alone' ? 'as-taken' : 'otherwise' };
		case 'song':
			return asked.why === 'alone' ? { is: 'titled', title: asked.text } : { is: 'as-taken' };
		default:
			return { is: 'as-taken' };
	}
}

/** Whether a line typed anew answers it: the cell, or the title that a row has not. */
export function takesALine(asked: Asked): boolean {
	return !isTwoWays(asked);
}

/** The answers with this line among them. */
export function typed(answers: Answers, asked: Asked, line: string): Answers {
	const key = answerKey(asked);
	return asked.why === 'no-title'
		? { ...answers, rows: new Map(answers.rows).set(key, { is: 'titled', title: line }) }
		: { ...answers, cells: new Map(answers.cells).set(key, line) };
}
