// The one list of all that a key can do, from which keys, footer, help and the table in the README are
// made; and which action a key does. The records stand in files by what they are about.

import type { Action } from './action.ts';
import {
	asItIs,
	bringBack,
	correctPedal,
	doubtAll,
	pack,
	putAside,
	ready,
	stage,
} from './gear-actions.ts';
import { exchange, handOver } from './hand-over-actions.ts';
import { describe, incident, memo, seekFault, stringBreak } from './incident-actions.ts';
import type { ViewName } from './key-context.ts';
import { LIST_ACTIONS } from './list-actions.ts';
import {
	finish,
	jump,
	nextSong,
	previousSong,
	putBack,
	step,
	stepBack,
	takeBack,
} from './show-actions.ts';
import {
	dark,
	help,
	leave,
	lock,
	narrow,
	pickDown,
	pickUp,
	settings,
	toStage,
	view,
	warnings,
} from './view-actions.ts';

/** Every action, most needed first. */
export const ACTIONS: readonly Action[] = [
	step,
	handOver,
	ready,
	stringBreak,
	finish,
	jump,
	takeBack,
	dark,
	help,
	stepBack,
	nextSong,
	previousSong,
	exchange,
	incident,
	describe,
	seekFault,
	memo,
	asItIs,
	putAside,
	bringBack,
	stage,
	doubtAll,
	correctPedal,
	pack,
	putBack,
	lock,
	view,
	warnings,
	toStage,
	pickUp,
	pickDown,
	narrow,
	settings,
	leave,
	...LIST_ACTIONS,
];

/** The same for the footer of a view: what can be done only there comes right after the first two. */
export function actionsIn(view: ViewName): readonly Action[] {
	if (view !== 'list') return ACTIONS;
	const [step, open, ...others] = ACTIONS.filter((one) => !LIST_ACTIONS.includes(one));
	return [step, open, ...LIST_ACTIONS, ...others].filter((one) => one !== undefined);
}

/** The action that a key does, with the keys that the user has set in place of the defaults (action id to key). */
export function actionOf(
	key: string,
	remapped: Readonly<Record<string, string>> = {},
): Action | null {
	const pressed = key.length === 1 ? key.toLowerCase() : key;
	const own = ACTIONS.find(({ id }) => remapped[id] === pressed);
	return (
		own ??
		ACTIONS.find(({ id, keys }) => remapped[id] === undefined && keys.includes(pressed)) ??
		null
	);
}
