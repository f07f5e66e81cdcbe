// How the gear stands: instruments ready, set otherwise, out, back, staged or in doubt; boards and packs.

import type { Instrument } from '../showfile/show.ts';
import { ACTION_WORDS, FOOTER, NO_BOARDS, NO_PACKS } from '../words/actions.ts';
import { WHICH_SLOT } from '../words/questions.ts';
import type { Action } from './action.ts';
import { command } from './action.ts';
import { seekKey } from './fault-search-prompt.ts';
import {
	correctPedalAsked,
	freedPedalKey,
	packAsked,
	stuckPedalKey,
	withBattery,
} from './gear-prompts.ts';
import type { Outcome } from './key-context.ts';
import { faultPrompt, slotPrompt } from './prompts.ts';
import { readyPrompt } from './ready-prompt.ts';
import { asItIsPrompt, doubtAllPrompt } from './text-prompts.ts';

function slotAction(title: string, then: (instrument: Instrument) => Outcome): () => Outcome {
	return () => ({ kind: 'prompt', prompt: slotPrompt(title, then) });
}

export const ready: Action = {
	id: 'ready',
	keys: ['t'],
	words: ACTION_WORDS.ready.help,
	footer: () => FOOTER.ready,
	act: readyPrompt,
};

export const asItIs: Action = {
	id: 'as-it-is',
	keys: ['c'],
	words: ACTION_WORDS['as-it-is'].help,
	act: slotAction(WHICH_SLOT.actual, (instrument) => ({
		kind: 'prompt',
		prompt: asItIsPrompt(instrument),
	})),
};

export const putAside: Action = {
	id: 'put-aside',
	keys: ['f'],
	words: ACTION_WORDS['put-aside'].help,
	act: (context) => ({
		kind: 'prompt',
		prompt: slotPrompt(
			WHICH_SLOT.aside,
			(instrument, now) => ({
				kind: 'prompt',
				prompt: faultPrompt(instrument, seekKey(now, instrument)),
			}),
			stuckPedalKey(context),
		),
	}),
};

export const bringBack: Action = {
	id: 'bring-back',
	keys: ['r'],
	words: ACTION_WORDS['bring-back'].help,
	act: (context) => ({
		kind: 'prompt',
		prompt: slotPrompt(
			WHICH_SLOT.back,
			({ id }) => command({ do: 'bring-back', instrument: id }),
			freedPedalKey(context),
		),
	}),
};

export const stage: Action = {
	id: 'stage',
	keys: ['s'],
	words: ACTION_WORDS.stage.help,
	act: slotAction(WHICH_SLOT.staged, ({ id }) => command({ do: 'stage', instrument: id })),
};

export const doubtAll: Action = {
	id: 'doubt-all',
	keys: ['a'],
	words: ACTION_WORDS['doubt-all'].help,
	act: () => ({ kind: 'prompt', prompt: doubtAllPrompt() }),
};

export const correctPedal: Action = {
	id: 'correct-pedal',
	keys: ['o'],
	words: ACTION_WORDS['correct-pedal'].help,
	whyNot: ({ session }) => (Object.keys(session.boards).length > 0 ? null : NO_BOARDS),
	act: correctPedalAsked,
};

export const pack: Action = {
	id: 'pack',
	keys: ['w'],
	words: ACTION_WORDS.pack.help,
	whyNot: ({ session }) => (withBattery(session.show).length > 0 ? null : NO_PACKS),
	act: packAsked,
};
