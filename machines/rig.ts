// One player's board run from offstage: what we believe each pedal is set to. States are always whole
// boards, never toggles: a missed cue is healed by the next one. A pedal that does not switch stays as
// it is believed through every cue.

import { assign, setup } from 'xstate';
import type { PedalState } from '../src/showfile/show.ts';
import type { Condition } from './advance.ts';

/**
 * `asCued`: as the last cue point says, but for what is stuck; `corrected`: somebody's foot changed it and
 * we said so.
 */
export type BoardCondition = 'atRest' | 'asCued' | 'corrected';

export type BoardContext = {
	readonly pedals: Readonly<Record<string, PedalState>>;
	/** The pedals that do not switch. */
	readonly stuck: readonly string[];
};

/** Every pedal of the board, in its order. */
export type BoardState = Condition<BoardCondition, BoardContext>;

export type BoardEvent =
	| { readonly type: 'cued'; readonly pedals: Readonly<Record<string, PedalState>> }
	| { readonly type: 'pedalFound'; readonly pedal: string; readonly on: boolean }
	| { readonly type: 'pedalStuck'; readonly pedal: string }
	| { readonly type: 'pedalFreed'; readonly pedal: string };

const OFF: PedalState = { on: false };

/** The whole board once a cue has asked for these: what it leaves out is off, what is stuck as it was. */
export function boardAfterCue(
	{ pedals, stuck }: BoardContext,
	asked: Readonly<Record<string, PedalState>>,
): BoardContext['pedals'] {
	return Object.fromEntries(
		Object.entries(pedals).map(([id, believed]) => [
			id,
			stuck.includes(id) ? believed : (asked[id] ?? OFF),
		]),
	);
}

const table = setup({
	types: { context: {} as BoardContext, events: {} as BoardEvent, input: {} as BoardContext },
	guards: {
		isOnBoard: ({ context, event }) =>
			event.type === 'pedalFound' && Object.hasOwn(context.pedals, event.pedal),
		isLoose: ({ context, event }) =>
			event.type === 'pedalStuck' &&
			Object.hasOwn(context.pedals, event.pedal) &&
			!context.stuck.includes(event.pedal),
		isStuck: ({ context, event }) =>
			event.type === 'pedalFreed' && context.stuck.includes(event.pedal),
	},
	actions: {
		setWhole: assign(({ context, event }) =>
			event.type === 'cued' ? { pedals: boardAfterCue(context, event.pedals) } : {},
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
		stick: assign(({ context, event }) =>
			event.type === 'pedalStuck' ? { stuck: [...context.stuck, event.pedal] } : {},
		),
		free: assign(({ context, event }) =>
			event.type === 'pedalFreed'
				? { stuck: context.stuck.filter((one) => one !== event.pedal) }
				: {},
		),
	},
});

const cued = { target: 'asCued', actions: 'setWhole' } as const;
// Stuck or not: somebody saw how it stands, and that is believed.
const pedalFound = { target: 'corrected', guard: 'isOnBoard', actions: 'setOne' } as const;

/** The law of a board. */
export const boardMachine = table.createMachine({
	id: 'board',
	context: ({ input }) => input,
	initial: 'atRest',
	on: {
		pedalStuck: { guard: 'isLoose', actions: 'stick' },
		pedalFreed: { guard: 'isStuck', actions: 'free' },
	},
	states: {
		atRest: { on: { cued, pedalFound } },
		asCued: { on: { cued, pedalFound } },
		corrected: { on: { cued, pedalFound } },
	},
});
