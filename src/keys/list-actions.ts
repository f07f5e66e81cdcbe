// The actions of the list view: tonight's list moved, added to, shortened. Their keys do nothing
// elsewhere, so that no letter of the live screen means two things.

import { NEW } from '../journal/record.ts';
import type { ListItem } from '../session/session.ts';
import { ACTION_WORDS, FOOTER, LIST_EMPTY, ONLY_IN_LIST } from '../words/actions.ts';
import type { Action } from './action.ts';
import type { KeyContext, Outcome } from './key-context.ts';
import { dropPrompt, holdPrompt, insertPrompt } from './list-prompts.ts';
import { readShowOutcome } from './read-show-prompt.ts';

function pickedItem({ session, picked }: KeyContext): ListItem | null {
	return session.list[Math.min(picked, session.list.length - 1)] ?? null;
}

/** An action of the list view on the picked row. */
function listAction(
	one: Pick<Action, 'id' | 'keys' | 'words'> & {
		readonly footer: (item: ListItem) => string;
		readonly act: (item: ListItem, context: KeyContext) => Outcome;
	},
): Action {
	return {
		...one,
		footer: (context) => {
			const item = context.view === 'list' ? pickedItem(context) : null;
			return item && one.footer(item);
		},
		whyNot: (context) => {
			if (context.view !== 'list') return ONLY_IN_LIST;
			return pickedItem(context) === null ? LIST_EMPTY : null;
		},
		act: (context) => {
			const item = pickedItem(context);
			return item === null ? { kind: 'close' } : one.act(item, context);
		},
	};
}

/** Every action of the list view, most needed first. */
export const LIST_ACTIONS: readonly Action[] = [
	listAction({
		id: 'move-song',
		keys: ['g'],
		words: ACTION_WORDS['move-song'].help,
		footer: () => FOOTER.move,
		act: (item, context) => holdPrompt(item, context),
	}),
	listAction({
		id: 'insert-song',
		keys: ['p'],
		words: ACTION_WORDS['insert-song'].help,
		footer: () => FOOTER.add,
		act: (item) => ({ kind: 'prompt', prompt: insertPrompt(item.key) }),
	}),
	listAction({
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
	listAction({
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
		footer: ({ view, readShow }) => (view === 'list' && readShow ? FOOTER.reload : null),
		whyNot: ({ view }) => (view === 'list' ? null : ONLY_IN_LIST),
		act: readShowOutcome,
	},
];
