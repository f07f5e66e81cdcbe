// How the gear stands: instruments ready, set otherwise, out, back, staged or in doubt; boards and packs.

import type { Instrument } from '../showfile/show.ts';
import type { Action } from './action.ts';
import { command } from './action.ts';
import { correctPedalAsked, freedPedalKey, packAsked, stuckPedalKey } from './gear-prompts.ts';
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
	words:
		'ready, due work done: enter for the first to do, or a slot; = and a slot: as it stands; before the show and in an interval 0: all, as they stand',
	footer: () => 'ready',
	act: readyPrompt,
};

export const asItIs: Action = {
	id: 'as-it-is',
	keys: ['c'],
	words: 'capo or tuning as it really is: slot, then a fret or a name',
	act: slotAction('Capo or tuning of which slot?', (instrument) => ({
		kind: 'prompt',
		prompt: asItIsPrompt(instrument),
	})),
};

export const putAside: Action = {
	id: 'put-aside',
	keys: ['f'],
	words: 'faulty or out tonight: slot, then what, or enter; 0 and its number: a pedal is stuck',
	act: (context) => ({
		kind: 'prompt',
		prompt: slotPrompt(
			'Faulty or out: which slot?',
			(instrument) => ({ kind: 'prompt', prompt: faultPrompt(instrument) }),
			stuckPedalKey(context),
		),
	}),
};

export const bringBack: Action = {
	id: 'bring-back',
	keys: ['r'],
	words: 'back from the bench or from outside: slot; 0 and its number: a pedal switches again',
	act: (context) => ({
		kind: 'prompt',
		prompt: slotPrompt(
			'Back on the rack: which slot?',
			({ id }) => command({ do: 'bring-back', instrument: id }),
			freedPedalKey(context),
		),
	}),
};

export const stage: Action = {
	id: 'stage',
	keys: ['s'],
	words: "staged at the player's place: slot",
	act: slotAction("At the player's place: which slot?", ({ id }) =>
		command({ do: 'stage', instrument: id }),
	),
};

export const doubtAll: Action = {
	id: 'doubt-all',
	keys: ['a'],
	words: 'everything on the rack needs checking again (light, heat, rain): enter',
	act: () => ({ kind: 'prompt', prompt: doubtAllPrompt() }),
};

export const correctPedal: Action = {
	id: 'correct-pedal',
	keys: ['o'],
	words: "a pedal isn't as shown: player's letter where several have boards, then its number",
	whyNot: ({ session }) =>
		Object.keys(session.boards).length > 0 ? null : 'No player has a board in this show.',
	act: correctPedalAsked,
};

export const pack: Action = {
	id: 'pack',
	keys: ['w'],
	words:
		"pack: player's letter, then its number, - where the current one is suspect; - and its number clears one",
	whyNot: ({ session }) => (session.show.packs.length > 0 ? null : 'This show lists no packs.'),
	act: packAsked,
};
