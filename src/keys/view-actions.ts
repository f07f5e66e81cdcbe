// What is shown, and what the screen lets through: views and their rows, dark, the lock, the way out.

import type { Action } from './action.ts';
import { leavePrompt } from './prompts.ts';
import { narrowPrompt } from './text-prompts.ts';

const nextView = {
	live: 'rack',
	rack: 'set',
	set: 'log',
	log: 'live',
	help: 'live',
	settings: 'live',
} as const;

export const view: Action = {
	id: 'view',
	keys: ['tab'],
	words: 'next view: live, rack, set, log; esc returns to live',
	act: ({ view }) => ({ kind: 'view', view: nextView[view] }),
};

export const live: Action = {
	id: 'live',
	keys: ['esc'],
	words: 'back to the live view',
	footer: ({ view }) => (view === 'live' ? null : 'live'),
	act: () => ({ kind: 'view', view: 'live' }),
};

export const help: Action = {
	id: 'help',
	keys: ['?', 'f1'],
	words: 'all keys',
	footer: () => 'all',
	act: ({ view }) => ({ kind: 'view', view: view === 'help' ? 'live' : 'help' }),
};

export const settings: Action = {
	id: 'settings',
	keys: [','],
	words: 'settings: looks, your own times for work, keys',
	act: ({ view }) => ({ kind: 'view', view: view === 'settings' ? 'live' : 'settings' }),
};

export const pickUp: Action = {
	id: 'pick-up',
	keys: ['up'],
	words: 'in a list: pick the one above',
	act: () => ({ kind: 'pick', by: -1 }),
	isEachCounted: true,
};

export const pickDown: Action = {
	id: 'pick-down',
	keys: ['down'],
	words: 'in a list: pick the one below',
	act: () => ({ kind: 'pick', by: 1 }),
	isEachCounted: true,
};

export const narrow: Action = {
	id: 'narrow',
	keys: ['/'],
	words: 'in the log view: only lines with the words typed',
	footer: ({ view }) => (view === 'log' ? 'only some' : null),
	whyNot: ({ view }) => (view === 'log' ? null : 'That is for the log view; tab goes there.'),
	act: (context) => ({ kind: 'prompt', prompt: narrowPrompt(context) }),
};

export const dark: Action = {
	id: 'dark',
	keys: ['z'],
	words: 'dark, and back',
	footer: () => 'dark',
	act: () => ({ kind: 'dark' }),
	isForDark: true,
};

export const lock: Action = {
	id: 'lock',
	keys: ['l'],
	words: 'lock; l then esc within 2 s unlocks',
	act: () => ({ kind: 'lock' }),
};

export const leave: Action = {
	id: 'leave',
	keys: ['q'],
	words: 'leave (the night stays open) or end the show',
	// Once the last song is over there is nothing left that is needed more.
	footer: ({ session }) => (session.phase.value === 'over' ? 'end the show' : null),
	act: () => ({ kind: 'prompt', prompt: leavePrompt() }),
};
