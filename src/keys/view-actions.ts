// What is shown, and what the screen lets through: views and their rows, dark, the lock, the way out.

import { saysOfRig } from '../rig/rig-path.ts';
import { ACTION_WORDS, FOOTER, ONLY_IN_LOG } from '../words/actions.ts';
import type { Action } from './action.ts';
import { leavePrompt } from './prompts.ts';
import { narrowPrompt } from './text-prompts.ts';

const nextView = {
	stage: 'rack',
	rack: 'list',
	list: 'log',
	log: 'far',
	far: 'rig',
	rig: 'stage',
	warnings: 'stage',
	help: 'stage',
	settings: 'stage',
} as const;

export const view: Action = {
	id: 'view',
	keys: ['tab'],
	words: ACTION_WORDS.view.help,
	act: ({ view, session: { show } }) => {
		const next = nextView[view];
		return { kind: 'view', view: next === 'rig' && !saysOfRig(show) ? 'stage' : next };
	},
};

export const toStage: Action = {
	// Settings are known by it, and `stage` is what puts an instrument at the player's place.
	id: 'live',
	keys: ['esc'],
	words: ACTION_WORDS.live.help,
	footer: ({ view }) => (view === 'stage' ? null : FOOTER.stage),
	act: () => ({ kind: 'view', view: 'stage' }),
};

export const help: Action = {
	id: 'help',
	keys: ['?', 'f1'],
	words: ACTION_WORDS.help.help,
	footer: () => FOOTER.all,
	act: ({ view }) => ({ kind: 'view', view: view === 'help' ? 'stage' : 'help' }),
};

export const warnings: Action = {
	id: 'warnings',
	keys: ['!'],
	words: ACTION_WORDS.warnings.help,
	act: ({ view }) => ({ kind: 'view', view: view === 'warnings' ? 'stage' : 'warnings' }),
};

export const settings: Action = {
	id: 'settings',
	keys: [','],
	words: ACTION_WORDS.settings.help,
	act: ({ view }) => ({ kind: 'view', view: view === 'settings' ? 'stage' : 'settings' }),
};

export const pickUp: Action = {
	id: 'pick-up',
	keys: ['up'],
	words: ACTION_WORDS['pick-up'].help,
	act: () => ({ kind: 'pick', by: -1 }),
	isEachCounted: true,
};

export const pickDown: Action = {
	id: 'pick-down',
	keys: ['down'],
	words: ACTION_WORDS['pick-down'].help,
	act: () => ({ kind: 'pick', by: 1 }),
	isEachCounted: true,
};

export const narrow: Action = {
	id: 'narrow',
	keys: ['/'],
	words: ACTION_WORDS.narrow.help,
	footer: ({ view }) => (view === 'log' ? FOOTER.search : null),
	whyNot: ({ view }) => (view === 'log' ? null : ONLY_IN_LOG),
	act: (context) => ({ kind: 'prompt', prompt: narrowPrompt(context) }),
};

export const dark: Action = {
	id: 'dark',
	keys: ['z'],
	words: ACTION_WORDS.dark.help,
	footer: () => FOOTER.dark,
	act: () => ({ kind: 'dark' }),
	isForDark: true,
};

export const lock: Action = {
	id: 'lock',
	keys: ['l'],
	words: ACTION_WORDS.lock.help,
	act: () => ({ kind: 'lock' }),
};

export const leave: Action = {
	id: 'leave',
	keys: ['q'],
	words: ACTION_WORDS.leave.help,
	// Once the last song is over there is nothing left that is needed more.
	footer: ({ session }) => (session.phase.value === 'over' ? FOOTER.closeShow : null),
	act: () => ({ kind: 'prompt', prompt: leavePrompt() }),
};
