// One instrument through the night: where it is, what it is in, whether it was made ready and when.
// Whether "ready" has gone stale is a question of time and is asked elsewhere (src/session/readiness.ts).

import { setup } from 'xstate';
import type { Tuning } from '../src/tuning/tuning.ts';
import { type Change, type Condition, type Law, named, type Question } from './advance.ts';

export type InstrumentPlace = 'racked' | 'staged' | 'inHands' | 'onBench' | 'out';

export type InstrumentContext = {
	readonly tuning: Tuning;
	readonly capo: number;
	/** When it was made ready as it is now; null when it needs work. */
	readonly readyAtMs: number | null;
	/** In hands since it was last wiped. */
	readonly isToWipe: boolean;
	/** Broken strings by number; null where nobody has said which. */
	readonly stringsDown: readonly (number | null)[];
	readonly faults: readonly string[];
	readonly inHandsSinceMs: number | null;
	/** When it last came back; null when it has not been out. */
	readonly backAtMs: number | null;
	/** Hours in hands on these strings; null when nobody knows. */
	readonly stringHours: number | null;
};

export type InstrumentState = Condition<InstrumentPlace, InstrumentContext>;

export type InstrumentEvent =
	| {
			readonly type: 'handed';
			readonly atMs: number;
			readonly tuning?: Tuning;
			readonly capo?: number;
	  }
	| { readonly type: 'returned'; readonly atMs: number }
	| {
			readonly type: 'madeReady';
			readonly atMs: number;
			readonly tuning?: Tuning;
			readonly capo?: number;
			readonly isRestrung?: boolean;
			/** Strings or pitches are on, and the touch-up comes later. */
			readonly isEarly?: boolean;
	  }
	| { readonly type: 'stringBroke' }
	| { readonly type: 'stringNamed'; readonly string: number }
	| { readonly type: 'foundAs'; readonly tuning?: Tuning; readonly capo?: number }
	| { readonly type: 'putOut'; readonly atMs: number }
	| { readonly type: 'foundFaulty'; readonly atMs: number; readonly fault: string }
	| { readonly type: 'broughtBack' }
	| { readonly type: 'staged' }
	| { readonly type: 'doubted' };

const MS_AN_HOUR = 3_600_000;

/** Hours on the strings once the instrument leaves the hands at `atMs`. */
function hoursAfter(context: InstrumentContext, atMs: number): number | null {
	if (context.stringHours === null || context.inHandsSinceMs === null) return context.stringHours;
	return context.stringHours + Math.max(0, atMs - context.inHandsSinceMs) / MS_AN_HOUR;
}

function nameString(down: readonly (number | null)[], string: number): readonly (number | null)[] {
	if (down.includes(string)) return down;
	const unnamed = down.indexOf(null);
	return unnamed < 0 ? [...down, string] : down.map((one, i) => (i === unnamed ? string : one));
}

type Asked = { readonly isBroken: boolean; readonly isRestrung: boolean };

const CHANGES = {
	takeIntoHands: (context, event) =>
		event.type !== 'handed'
			? {}
			: {
					tuning: event.tuning ?? context.tuning,
					capo: event.capo ?? context.capo,
					readyAtMs: null,
					isToWipe: true,
					inHandsSinceMs: context.inHandsSinceMs ?? event.atMs,
				},
	takeOutOfHands: (context, event) =>
		'atMs' in event && context.inHandsSinceMs !== null
			? {
					stringHours: hoursAfter(context, event.atMs),
					inHandsSinceMs: null,
					backAtMs: event.atMs,
					readyAtMs: null,
				}
			: { readyAtMs: null },
	markReady: (context, event) =>
		event.type !== 'madeReady'
			? {}
			: {
					tuning: event.tuning ?? context.tuning,
					capo: event.capo ?? context.capo,
					readyAtMs: event.isEarly ? null : event.atMs,
					isToWipe: false,
					stringsDown: event.isRestrung ? [] : context.stringsDown,
					stringHours: event.isRestrung ? 0 : context.stringHours,
					faults: [],
				},
	dropString: ({ stringsDown }) => ({ stringsDown: [...stringsDown, null], readyAtMs: null }),
	nameString: ({ stringsDown }, event) =>
		event.type === 'stringNamed' ? { stringsDown: nameString(stringsDown, event.string) } : {},
	believe: (context, event) =>
		event.type === 'foundAs'
			? {
					tuning: event.tuning ?? context.tuning,
					capo: event.capo ?? context.capo,
					readyAtMs: null,
				}
			: {},
	noteFault: ({ faults }, event) =>
		event.type === 'foundFaulty' && !faults.includes(event.fault)
			? { faults: [...faults, event.fault] }
			: {},
	clearFaults: () => ({ faults: [], readyAtMs: null }),
	doubt: () => ({ readyAtMs: null }),
} as const satisfies Readonly<Record<string, Change<InstrumentContext, InstrumentEvent>>>;

const table = setup({
	types: { events: {} as Question<InstrumentEvent, Asked> },
	guards: {
		isWhole: ({ event }) => !event.isBroken || event.isRestrung,
		isBroken: ({ event }) => event.isBroken,
	},
	actions: named(CHANGES),
});

const machine = table.createMachine({
	id: 'instrument',
	initial: 'racked',
	on: {
		stringBroke: { actions: 'dropString' },
		stringNamed: { actions: 'nameString', guard: 'isBroken' },
		foundAs: { actions: 'believe' },
		putOut: { target: '.out', actions: 'takeOutOfHands' },
		foundFaulty: { target: '.onBench', actions: ['takeOutOfHands', 'noteFault'] },
	},
	states: {
		racked: {
			on: {
				handed: { target: 'inHands', actions: 'takeIntoHands' },
				madeReady: { guard: 'isWhole', actions: 'markReady' },
				staged: 'staged',
				doubted: { actions: 'doubt' },
			},
		},
		staged: {
			on: {
				handed: { target: 'inHands', actions: 'takeIntoHands' },
				madeReady: { guard: 'isWhole', actions: 'markReady' },
				broughtBack: { target: 'racked' },
				doubted: { actions: 'doubt' },
			},
		},
		inHands: {
			on: {
				handed: { actions: 'takeIntoHands' },
				returned: [
					{ guard: 'isBroken', target: 'onBench', actions: 'takeOutOfHands' },
					{ target: 'racked', actions: 'takeOutOfHands' },
				],
			},
		},
		onBench: {
			on: {
				handed: { target: 'inHands', actions: 'takeIntoHands' },
				madeReady: { guard: 'isWhole', target: 'racked', actions: 'markReady' },
				broughtBack: { target: 'racked', actions: 'clearFaults' },
			},
		},
		out: { on: { broughtBack: { target: 'racked', actions: 'clearFaults' } } },
	},
});

/** The law of an instrument: what may happen to it, where it then is, and what is then known of it. */
export const instrumentLaw: Law<InstrumentContext, InstrumentEvent> = {
	machine,
	asked: ({ stringsDown }, event): Asked => ({
		isBroken: stringsDown.length > 0,
		isRestrung: event.type === 'madeReady' && event.isRestrung === true,
	}),
	changes: CHANGES,
};
