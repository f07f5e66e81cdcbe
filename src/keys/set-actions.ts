// The actions of the set view: tonight's list moved, added to, shortened. Their keys do nothing
// elsewhere, so that no letter of the live screen means two things.

import { NEW } from '../journal/record.ts';
import type { ListItem } from '../session/session.ts';
import { ACTION_WORDS, FOOTER, LIST_EMPTY, ONLY_IN_LIST } from '../words/actions.ts';
import type { Action } from './action.ts';
import type { KeyContext, Outcome } from './key-context.ts';
import { readShowOutcome } from './read-show-prompt.ts';
import { dropPrompt, holdPrompt, insertPrompt } from './set-prompts.ts';

function pickedItem({ session, picked }: KeyContext): ListItem | null {
	return session.list[Math.min(picked, session.list.length - 1)] ?? null;
}

/** An action of the set view on the picked row. */
function setAction(
	one: Pick<Action, 'id' | 'keys' | 'words'> & {
		readonly footer: (item: ListItem) => string;
		readonly act: (item: ListItem, context: KeyContext) => Outcome;
	},
): Action {
	return {
		...one,
		footer: (context) => {
			const item = context.view === 'set' ? pickedItem(context) : null;
			return item && one.footer(item);
		},
		whyNot: (context) => {
			if (context.view !== 'set') return ONLY_IN_LIST;
			return pickedItem(context) === null ? LIST_EMPTY : null;
		},
		act: (context) => {
			const item = pickedItem(context);
			return item === null ? { kind: 'close' } : one.act(item, context);
		},
	};
}

/** Every action of the set view, most needed first. */
export const SET_ACTIONS: readonly Action[] = [
	setAction({
		id: 'move-song',
		keys: ['g'],
		words: ACTION_WORDS['move-song'].help,
		footer: () => FOOTER.move,
		act: (item, context) => holdPrompt(item, context),
	}),
	setAction({
		id: 'insert-song',
		keys: ['p'],
		words: ACTION_WORDS['insert-song'].help,
		footer: () => FOOTER.add,
		act: (item) => ({ kind: 'prompt', prompt: insertPrompt(item.key) }),
	}),
	setAction({
		id: 'drop-song',
		keys: ['k'],
		words: ACTION_WORDS['drop-song'].help,
		footer: (item) => (item.kind === 'song' && item.isPassedOver ? FOOTER.addAgain : FOOTER.drop),
		act: (item, context) =>
			item.kind === 'song' && item.isPassedOver
				? {
						kind: 'command',
						command: { do: 'restore-song', item: item.key },
						follows: item.key,
					}
				: dropPrompt(item, context),
	}),
	setAction({
		id: 'encore',
		keys: ['h'],
		words: ACTION_WORDS.encore.help,
		footer: () => FOOTER.encore,
		act: (item) => ({
			kind: 'command',
			command: { do: 'play-in-encore', item: item.key },
			// What was played is put in anew.
			follows: item.kind === 'song' && item.runs.length > 0 ? NEW : item.key,
		}),
	}),
	{
		id: 'read-show',
		keys: ['v'],
		words: ACTION_WORDS['read-show'].help,
		footer: ({ view, readShow }) => (view === 'set' && readShow ? FOOTER.reload : null),
		whyNot: ({ view }) => (view === 'set' ? null : ONLY_IN_LIST),
		act: readShowOutcome,
	},
];
