// The settings view: names, values, notes, and the questions for another one.

import type { ColourSet } from '../base/colours.ts';

export const COLOURS = 'colours';
/** What each set of colours is called. */
export const COLOUR_NAMES: Readonly<Record<ColourSet, string>> = {
	dark: 'white',
	amber: 'amber',
	grey: 'grey',
	none: 'none',
};
export const coloursNote = (count: number): string => `enter: the next of ${count}`;
export const coloursNow = (colours: ColourSet): string =>
	`The colours are ${COLOUR_NAMES[colours]} now.`;
export const keyNote = (usual: string): string => `default ${usual}`;
export const NO_SUCH_SETTING = 'There is no such setting.';
export const notSaved = (words: string): string => `${words} It could not be saved.`;

// One's own times for work.

export const TIME_HINT = 'Type it as 45s, 4m30s or 1:30, then enter.';
export const TIME_NOTES = {
	file: (file: string): string => `show file ${file}`,
	tonight: (time: string): string => `tonight ${time}`,
	builtIn: 'built in',
	own: (builtIn: string): string => `yours, built in ${builtIn}`,
	range: (least: string, most: string): string => `${least} to ${most}`,
	some: ', some',
	inAll: ' in all',
} as const;
export function timeTitle(asked: {
	readonly words: string;
	readonly isAdded: boolean;
	readonly now: string;
	readonly isOwn: boolean;
}): string {
	const { words, isAdded, now, isOwn } = asked;
	const what = isAdded ? `${words}, on top of the touch-up` : words;
	return `${what}, now ${now} ${isOwn ? 'yours' : 'built in'}:`;
}
export const fileComesFirst = (file: string): string =>
	`The show file says ${file}, and comes first tonight.`;
export const tonightUses = (time: string, reloadKey: string): string =>
	`Tonight uses ${time} until you change it here or reload the show file with ${reloadKey}.`;
export const backToBuiltIn = (time: string): string => `back to the built-in ${time}`;
export const notATime = (typed: string, expected: string): string =>
	`${typed === '' ? 'Nothing' : typed} is not ${expected}.`;
export const timeNow = (words: string): string =>
	`${words.charAt(0).toUpperCase()}${words.slice(1)}, from now on and in every show read later.`;
