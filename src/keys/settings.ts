// The settings view: what a user prefers, a row each, and what enter does there. The colours go round,
// times and keys are asked for.

import { COLOUR_SETS } from '../base/colours.ts';
import type { Show } from '../showfile/show.ts';
import { actionName, keyNow, newKeyTitle } from '../words/actions.ts';
import { ANSWERS } from '../words/questions.ts';
import {
	COLOUR_NAMES,
	COLOURS,
	coloursNote,
	coloursNow,
	keyNote,
	NO_SUCH_SETTING,
} from '../words/settings.ts';
import { CHOOSABLE_ACTIONS, keyOfAction, whyNotKey } from './key-choices.ts';
import type { KeyContext, Outcome, Prompt } from './key-context.ts';
import type { Preferences } from './preferences.ts';
import { choicePrompt } from './prompts.ts';
import type { SettingRow } from './setting-row.ts';
import { timeSettings } from './time-settings.ts';

/** Every setting, the colours first. */
export function settingRows({ preferences, show }: SettingsInput): readonly SettingRow[] {
	const { colours, keys, times } = preferences;
	const next = COLOUR_SETS[(COLOUR_SETS.indexOf(colours) + 1) % COLOUR_SETS.length] ?? 'dark';
	return [
		{
			name: COLOURS,
			value: COLOUR_NAMES[colours],
			note: coloursNote(COLOUR_SETS.length),
			open: () => ({
				kind: 'prefer',
				changes: { colours: next },
				words: coloursNow(next),
			}),
		},
		...timeSettings(times, show),
		...CHOOSABLE_ACTIONS.map(({ id, keys: [usual = ''] }) => ({
			name: actionName(id),
			value: keyOfAction(id, keys),
			note: keys[id] === undefined ? '' : keyNote(usual),
			open: (): Outcome => ({ kind: 'prompt', prompt: keyPrompt(id) }),
		})),
	];
}

type SettingsInput = { readonly preferences: Preferences; readonly show: Show };

/** What enter does on the picked row of the settings view. */
export function openSetting({ preferences, picked, session }: KeyContext): Outcome {
	return (
		settingRows({ preferences, show: session.show })[picked]?.open() ?? {
			kind: 'say',
			words: NO_SUCH_SETTING,
		}
	);
}

/** Asks for the key of an action: the next key pressed. */
function keyPrompt(id: string): Prompt {
	return choicePrompt(
		({ preferences }) => ({
			title: newKeyTitle(id, keyOfAction(id, preferences.keys)),
			choices: [
				{ key: 'delete', words: ANSWERS.default },
				{ key: 'esc', words: ANSWERS.cancel },
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
				words: keyNow(key, id),
			};
		},
	);
}
