// Paths made by XState's own graph functions reach every state of each machine, and what must always
// hold holds at every step of them.

import { describe, expect, test } from 'vitest';
import { createMachine, fromTransition, initialTransition, transition } from 'xstate';
import { getShortestPaths, getSimplePaths } from 'xstate/graph';
import { advance, type Condition, type Law } from '../../machines/advance.ts';
import { showBefore } from '../../machines/at-load-in.ts';
import {
	type InstrumentEvent,
	type InstrumentState,
	instrumentLaw,
} from '../../machines/instrument.ts';
import { type BoardState, boardLaw } from '../../machines/rig.ts';
import { showLaw } from '../../machines/show.ts';
import { cueIndex, cuePoints } from '../../machines/song.ts';
import { advanceSong, songBegun, songLaw } from '../../machines/song-machine.ts';
import type { Song } from '../../src/showfile/show.ts';
import { tuningCalled } from '../../src/tuning/tuning.ts';

const standard = tuningCalled('E standard', 'electric-6');
const dropD = tuningCalled('drop D', 'electric-6');
if (!standard || !dropD) throw new Error('the two commonest tunings have names');

type Event = { readonly type: string };

/** What XState's own step and the actions that it names make of a condition. */
function stepped<Value extends string, Context, Kind extends Event>(
	{ machine, asked, changes }: Law<Context, Kind>,
	{ value, context }: Condition<Value, Context>,
	event: Kind,
) {
	const question = { type: event.type, ...asked(context, event) };
	const state = machine.resolveState({ value, context: {} });
	const [after, actions] = transition(machine, state, question);
	const change = (now: Context, { type }: Event) => ({ ...now, ...changes[type]?.(now, event) });
	return { value: after.value, context: actions.reduce(change, context) };
}

/**
 * A law with the data that it changes, as something that the graph functions walk; what is not taken changes nothing.
 * Every step is the one that XState makes.
 */
const walked = <Value extends string, Context, Kind extends Event>(
	law: Law<Context, Kind>,
	begun: Condition<Value, Context>,
) =>
	fromTransition((condition: Condition<Value, Context>, event: Kind) => {
		const after = advance(law, condition, event) ?? condition;
		expect(after).toEqual(stepped(law, condition, event));
		return after;
	}, begun);

const racked: InstrumentState = {
	value: 'racked',
	context: {
		tuning: standard,
		capo: 0,
		readyAtMs: null,
		isToWipe: false,
		stringsDown: [],
		faults: [],
		inHandsSinceMs: null,
		backAtMs: null,
		stringHours: null,
	},
};

const events: readonly InstrumentEvent[] = [
	{ type: 'handed', atMs: 1000, tuning: dropD },
	{ type: 'returned', atMs: 2000 },
	{ type: 'madeReady', atMs: 3000 },
	{ type: 'madeReady', atMs: 3000, isRestrung: true },
	{ type: 'stringBroke' },
	{ type: 'stringNamed', string: 3 },
	{ type: 'foundAs', tuning: standard },
	{ type: 'putOut', atMs: 2000 },
	{ type: 'foundFaulty', atMs: 2000, fault: 'jack' },
	{ type: 'broughtBack' },
	{ type: 'staged' },
	{ type: 'doubted' },
];

describe('an instrument', () => {
	const paths = getShortestPaths(walked(instrumentLaw, racked), {
		// Breaking string after string never ends; two are as good as six here.
		events: ({ context: { context } }) => (context.stringsDown.length > 1 ? [] : [...events]),
		// Hours on the strings add up for ever; they decide nothing here.
		serializeState: ({ context: { value, context } }) =>
			JSON.stringify([value, { ...context, stringHours: null }]),
		limit: 100_000,
	}).map(({ state, steps }) => ({ state: state.context, steps }));
	test('reaches every place but the case, which only a packed show knows', () => {
		expect(new Set(paths.map(({ state }) => state.value))).toEqual(
			new Set(['racked', 'staged', 'inHands', 'onBench', 'out']),
		);
	});
	test('with a string down it never reads as ready, and never does in hands, aside or out', () => {
		for (const { state } of paths) {
			const { readyAtMs, stringsDown, inHandsSinceMs } = state.context;
			if (stringsDown.length > 0) expect(readyAtMs).toBeNull();
			if (!['racked', 'staged'].includes(state.value as string)) expect(readyAtMs).toBeNull();
			expect(inHandsSinceMs !== null).toBe(state.value === 'inHands');
		}
	});
	test('comes back to the rack whole and to the bench broken', () => {
		for (const { state, steps } of paths) {
			if (steps.at(-1)?.event.type !== 'returned') continue;
			expect(state.value).toBe(state.context.stringsDown.length > 0 ? 'onBench' : 'racked');
		}
	});
});

const song: Song = {
	id: 'lantern',
	title: 'Lantern',
	lengthSeconds: 210,
	tempo: null,
	parts: {
		ash: { kind: 'named', instrument: 'A4', tuning: dropD, capo: 0, leave: null, pack: null },
	},
	board: {},
	cues: [
		{ at: 'Ch1', nearSeconds: null, say: null, hand: {}, boards: { bo: { drive: { on: true } } } },
		{
			at: 'bridge',
			nearSeconds: null,
			say: null,
			hand: {
				ash: { kind: 'named', instrument: 'A1', tuning: null, capo: 0, leave: null, pack: null },
			},
			boards: {},
		},
	],
	starts: null,
	count: null,
	ends: 'ring',
	notes: null,
};

describe('a song', () => {
	test('has one state for each cue point in order, all reached', () => {
		const { machine } = songLaw(song);
		const values = getSimplePaths(machine).map(({ state }) => state.value);
		expect(new Set(values)).toEqual(new Set(['point-0', 'point-1', 'point-2']));
		expect(songBegun(song).value).toBe(initialTransition(machine)[0].value);
	});
	test('carries the whole board at every point, and at rest before the first that sets it', () => {
		expect(cuePoints(song).map(({ boards }) => boards)).toEqual([
			{ bo: {} },
			{ bo: { drive: { on: true } } },
			{ bo: { drive: { on: true } } },
		]);
		expect(cuePoints(song)[2]?.parts.ash).toMatchObject({ instrument: 'A1' });
	});
	test('refuses to step past its last point or back from its start', () => {
		const begun = songBegun(song);
		expect(advanceSong(song, begun, { type: 'steppedBack' })).toBeNull();
		const second = advanceSong(song, begun, { type: 'stepped' });
		const third = second && advanceSong(song, second, { type: 'stepped' });
		expect(third && cueIndex(third)).toBe(2);
		expect(third && advanceSong(song, third, { type: 'stepped' })).toBeNull();
	});
});

test('an evening reaches every phase, and nothing follows packing', () => {
	const ends = (['changeover', 'interval', 'encore', 'over'] as const).flatMap((ahead) => [
		{ type: 'songEnded', ahead } as const,
		{ type: 'nextChosen', ahead } as const,
	]);
	const paths = getShortestPaths(walked(showLaw, showBefore()), {
		events: [{ type: 'songBegan' }, { type: 'showEnded' }, ...ends],
	});
	expect(new Set(paths.map(({ state }) => state.context.value))).toEqual(
		new Set(['before', 'song', 'changeover', 'interval', 'encore', 'over', 'packed']),
	);
	for (const { steps } of paths) {
		const values = steps.map(({ state }) => state.context.value);
		const packedAt = values.indexOf('packed');
		if (packedAt >= 0)
			expect(values.slice(packedAt).every((value) => value === 'packed')).toBe(true);
	}
});

test('a board cued or corrected always has all its pedals, and only those', () => {
	const board: BoardState = {
		value: 'atRest',
		context: { pedals: { drive: { on: false }, boost: { on: false } }, stuck: [] },
	};
	const paths = getShortestPaths(walked(boardLaw, board), {
		events: [
			{ type: 'cued', pedals: { drive: { on: true } } },
			{ type: 'cued', pedals: {} },
			{ type: 'pedalFound', pedal: 'boost', on: true },
			{ type: 'pedalFound', pedal: 'stranger', on: true },
			{ type: 'pedalStuck', pedal: 'drive' },
			{ type: 'pedalStuck', pedal: 'stranger' },
			{ type: 'pedalFreed', pedal: 'drive' },
		],
	});
	expect(new Set(paths.map(({ state }) => state.context.value))).toEqual(
		new Set(['atRest', 'asCued', 'corrected']),
	);
	for (const { state } of paths) {
		const { pedals, stuck } = state.context.context;
		expect(Object.keys(pedals)).toEqual(['drive', 'boost']);
		expect([[], ['drive']]).toContainEqual(stuck);
	}
});

test('a pedal that is stuck is moved by no cue, only by who sees it', () => {
	const board: BoardState = {
		value: 'atRest',
		context: { pedals: { drive: { on: true }, boost: { on: false } }, stuck: ['drive'] },
	};
	const paths = getSimplePaths(walked(boardLaw, board), {
		events: [
			{ type: 'cued', pedals: {} },
			{ type: 'cued', pedals: { boost: { on: true } } },
			{ type: 'pedalFound', pedal: 'drive', on: false },
		],
	});
	const drive = ({ state }: (typeof paths)[number]) => state.context.context.pedals.drive?.on;
	expect(new Set(paths.map(drive))).toEqual(new Set([true, false]));
	for (const path of paths) {
		const { state, steps } = path;
		const wasSeen = steps.some(({ event }) => event.type === 'pedalFound');
		expect(drive(path)).toBe(!wasSeen);
		if (steps.at(-1)?.event.type === 'cued') expect(state.context.value).toBe('asCued');
	}
});

test('the graph functions would see a state that nothing leads to', () => {
	const island = createMachine({ initial: 'a', states: { a: {}, b: {} } });
	expect(getSimplePaths(island).map(({ state }) => state.value)).toEqual(['a']);
});
