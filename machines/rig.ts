// One player's board run from offstage: what we believe each pedal is set to. States are always whole
// boards, never toggles: a missed cue is healed by the next one.

import { assign, setup } from 'xstate';
import type { PedalState } from '../src/showfile/show.ts';
import type { Condition } from './advance.ts';

/** `asCued`: as the last cue point says; `corrected`: somebody's foot changed it and we said so. */
export type BoardCondition = 'atRest' | 'asCued' | 'corrected';

export type BoardContext = { readonly pedals: Readonly<Record<string, PedalState>> };

/** Every pedal of the board, in its order. */
export type BoardState = Condition<BoardCondition, BoardContext>;

export type BoardEvent =
	| { readonly type: 'cued'; readonly pedals: Readonly<Record<string, PedalState>> }
	| { readonly type: 'pedalFound'; readonly pedal: string; readonly on: boolean };

const OFF: PedalState = { on: false };

/** The whole board that a cue asks for: what it leaves out is off. */
function wholeBoard(
	context: BoardContext,
	asked: Readonly<Record<string, PedalState>>,
): BoardContext['pedals'] {
	return Object.fromEntries(Object.keys(context.pedals).map((id) => [id, asked[id] ?? OFF]));
}

const table = setup({
	types: { context: {} as BoardContext, events: {} as BoardEvent, input: {} as BoardContext },
	guards: {
		isOnBoard: ({ context, event }) =>
			event.type === 'pedalFound' && Object.hasOwn(context.pedals, event.pedal),
	},
	actions: {
		setWhole: assign(({ context, event }) =>
			event.type === 'cued' ? { pedals: wholeBoard(context, event.pedals) } : {},
		),
		setOne: assign(({ context, event }) =>
			event.type === 'pedalFound'
				? {
						pedals: {
							...context.pedals,
							[event.pedal]: { ...context.pedals[event.pedal], on: event.on },
						},
					}
				: {},
		),
	},
});

const cued = { target: 'asCued', actions: 'setWhole' } as const;
const pedalFound = { target: 'corrected', guard: 'isOnBoard', actions: 'setOne' } as const;

/** The law of a board. */
export const boardMachine = table.createMachine({
	id: 'board',
	context: ({ input }) => input,
	initial: 'atRest',
	states: {
		atRest: { on: { cued, pedalFound } },
		asCued: { on: { cued, pedalFound } },
		corrected: { on: { cued, pedalFound } },
	},
});
