// One player's board run from offstage: what we believe each pedal is set to. States are always whole
// boards, never toggles: a missed cue is healed by the next one. A pedal that does not switch stays as
// it is believed through every cue.

import { setup } from 'xstate';
import type { PedalState } from '../src/showfile/show.ts';
import { type Change, type Condition, type Law, named, type Question } from './advance.ts';

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

type Asked = { readonly isOnBoard: boolean; readonly isStuck: boolean };

const CHANGES = {
	setWhole: (context, event) =>
		event.type === 'cued' ? { pedals: boardAfterCue(context, event.pedals) } : {},
	setOne: ({ pedals }, event) =>
		event.type === 'pedalFound'
			? { pedals: { ...pedals, [event.pedal]: { ...pedals[event.pedal], on: event.on } } }
			: {},
	stick: ({ stuck }, event) =>
		event.type === 'pedalStuck' ? { stuck: [...stuck, event.pedal] } : {},
	free: ({ stuck }, event) =>
		event.type === 'pedalFreed' ? { stuck: stuck.filter((one) => one !== event.pedal) } : {},
} as const satisfies Readonly<Record<string, Change<BoardContext, BoardEvent>>>;

const table = setup({
	types: { events: {} as Question<BoardEvent, Asked> },
	guards: {
		isOnBoard: ({ event }) => event.isOnBoard,
		isLoose: ({ event }) => event.isOnBoard && !event.isStuck,
		isStuck: ({ event }) => event.isStuck,
	},
	actions: named(CHANGES),
});

const cued = { target: 'asCued', actions: 'setWhole' } as const;
// Stuck or not: somebody saw how it stands, and that is believed.
const pedalFound = { target: 'corrected', guard: 'isOnBoard', actions: 'setOne' } as const;

const machine = table.createMachine({
	id: 'board',
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

/** The law of a board. */
export const boardLaw: Law<BoardContext, BoardEvent> = {
	machine,
	asked: ({ pedals, stuck }, event): Asked => ({
		isOnBoard: 'pedal' in event && Object.hasOwn(pedals, event.pedal),
		isStuck: 'pedal' in event && stuck.includes(event.pedal),
	}),
	changes: CHANGES,
};
