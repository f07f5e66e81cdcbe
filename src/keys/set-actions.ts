// The actions of the set view: tonight's list moved, added to, shortened. Their keys do nothing
// elsewhere, so that no letter of the live screen means two things.

import { NEW } from '../journal/record.ts';
import type { ListItem } from '../session/session.ts';
import type { Action } from './action.ts';
import type { KeyContext, Outcome } from './key-context.ts';
import { readShowOutcome } from './read-show-prompt.ts';
import { dropPrompt, holdPrompt, insertPrompt } from './set-prompts.ts';

const ELSEWHERE = 'That is for the set view; tab goes there.';

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
		words: `in the set view: ${one.words}`,
		footer: (context) => {
			const item = context.view === 'set' ? pickedItem(context) : null;
			return item && one.footer(item);
		},
		whyNot: (context) => {
			if (context.view !== 'set') return ELSEWHERE;
			return pickedItem(context) === null ? 'The set is empty.' : null;
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
		words: 'hold the picked song; up and down move it',
		footer: () => 'move',
		act: (item, context) => holdPrompt(item, context),
	}),
	setAction({
		id: 'insert-song',
		keys: ['p'],
		words: 'put a song in after the picked one',
		footer: () => 'put in',
		act: (item) => ({ kind: 'prompt', prompt: insertPrompt(item.key) }),
	}),
	setAction({
		id: 'drop-song',
		keys: ['k'],
		words: 'drop the picked song, or take it on again',
		footer: (item) => (item.kind === 'song' && item.isPassedOver ? 'take on again' : 'drop'),
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
		words: 'the picked song to the end of the encore',
		footer: () => 'encore',
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
		words: 'in the set view: read the show file again',
		footer: ({ view, readShow }) => (view === 'set' && readShow ? 'read file' : null),
		whyNot: ({ view }) => (view === 'set' ? null : ELSEWHERE),
		act: readShowOutcome,
	},
];
