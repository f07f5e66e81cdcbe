// The settings view: what a user prefers, a row each, and what enter does there. The looks go round, a
// key is asked for.

import { LOOK_NAMES } from '../base/colors.ts';
import { actionName, CHOOSABLE_ACTIONS, keyOfAction, whyNotKey } from './key-choices.ts';
import type { KeyContext, Outcome, Prompt } from './key-context.ts';
import type { Preferences } from './preferences.ts';
import { choicePrompt } from './prompts.ts';

/** A row of the settings view. */
export type SettingRow = {
	readonly name: string;
	readonly value: string;
	/** What may be said besides: what it is by default. */
	readonly note: string;
};

/** Every setting, the looks first. */
export function settingRows({ looks, keys }: Preferences): readonly SettingRow[] {
	return [
		{ name: 'looks', value: looks, note: `enter: the next of ${LOOK_NAMES.length}` },
		...CHOOSABLE_ACTIONS.map(({ id, keys: [usual = ''] }) => ({
			name: actionName(id),
			value: keyOfAction(id, keys),
			note: keys[id] === undefined ? '' : `usually ${usual}`,
		})),
	];
}

/** What enter does on the picked row of the settings view. */
export function openSetting({ preferences, picked }: KeyContext): Outcome {
	if (picked === 0) {
		const looks =
			LOOK_NAMES[(LOOK_NAMES.indexOf(preferences.looks) + 1) % LOOK_NAMES.length] ?? 'dark';
		return { kind: 'prefer', changes: { looks }, words: `The looks are ${looks} now.` };
	}
	const action = CHOOSABLE_ACTIONS[picked - 1];
	return action === undefined
		? { kind: 'say', words: 'There is no such setting.' }
		: { kind: 'prompt', prompt: keyPrompt(action.id) };
}

/** Asks for the key of an action: the next key pressed. */
function keyPrompt(id: string): Prompt {
	return choicePrompt(
		({ preferences }) => ({
			title: `New key for ${actionName(id)}, now ${keyOfAction(id, preferences.keys)}: press it`,
			choices: [
				{ key: 'delete', words: 'the usual one' },
				{ key: 'esc', words: 'leave it' },
			],
		}),
		(pressed, { preferences }) => {
			const { [id]: _, ...others } = preferences.keys;
			const isUsual = pressed === 'delete' || pressed === 'backspace';
			const usual = CHOOSABLE_ACTIONS.find((one) => one.id === id)?.keys[0] ?? '';
			const key = isUsual ? usual : pressed.toLowerCase();
			const why = whyNotKey(id, key, others);
			if (why !== null) return { kind: 'say', words: why };
			const keys = key === usual ? others : { ...others, [id]: key };
			return {
				kind: 'prefer',
				changes: { keys },
				words: `${key} is the key for ${actionName(id)} now.`,
			};
		},
	);
}
