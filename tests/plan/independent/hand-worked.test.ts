// Plans before the doors worked out by hand, one rule of the model each.

import { expect, test } from 'vitest';
import { bestPlan } from './best-plan.ts';
import { orderShown } from './order-shown.ts';
import { showOf } from './show-of.ts';
import { workingClock } from './working-clock.ts';

const PLAYERS = 'players: [{id: ash}, {id: bo}, {id: cleo}]';
const E = 'kind: electric-6, tuning: E standard';

type Given = {
	readonly instruments: readonly string[];
	readonly songs: readonly string[];
	readonly set: string;
	readonly show?: string;
};

function planned({ instruments, songs, set, show = '{title: By hand}' }: Given) {
	const lists = [
		`instruments: [${instruments.map((one) => `{${one}}`).join(', ')}]`,
		`songs: [${songs.map((one) => `{${one}}`).join(', ')}]`,
	];
	const text = ['format: rackside/1', `show: ${show}`, PLAYERS, ...lists, `set: [${set}]`];
	const best = bestPlan(showOf(`${text.join('\n')}\n`));
	const [plan] = best.plans;
	const played = Object.fromEntries(
		plan!.slots.map(({ slot, played: has }) => [slot, has && `${has.instrument} ${has.capo}`]),
	);
	return { ...best, plan: plan!, played };
}

const NOTHING = {
	missing: 0,
	substituted: 0,
	overGap: 0,
	lateness: 0,
	changed: 0,
	backup: 0,
	handOvers: 0,
	retunings: 0,
	preference: 0,
};

test('back at 4:15, wipe and touch-up, wanted 7:45', () => {
	const { plan, cost, count } = planned({
		instruments: [`id: A1, ${E}`, 'id: A4, kind: electric-6, tuning: drop D'],
		songs: [
			'id: harbour, length: "4:00", hands: {ash: A1}',
			'id: lantern, length: "3:30", hands: {ash: {instrument: A4, tuning: drop D}}',
			'id: gravel, length: "3:45", hands: {ash: A1}',
		],
		set: 'harbour, lantern, gravel',
	});
	expect(cost).toEqual({ ...NOTHING, handOvers: 2 });
	expect(count).toBe(1);
	expect(plan.pieces).toEqual([
		{
			instrument: 'A1',
			section: 2,
			part: 'whole',
			isRestring: false,
			seconds: 60,
			from: 255,
			wanted: 465,
		},
	]);
	const clock = workingClock(plan.busy);
	const [shown] = orderShown(plan.pieces, { now: 255, clock, intervalEnds: null });
	expect(shown).toMatchObject({ start: 255, finish: 315, slack: 150 });
});

test('three hand-overs of 10, 12 and 15 s need 37 s: in 40 they fit, in 36 the longest does not', () => {
	const change = (gap: string) =>
		planned({
			instruments: [
				`id: A1, ${E}`,
				`id: B1, ${E}`,
				'id: C1, kind: bass-4, tuning: standard',
				'id: M1, kind: mandolin-8, tuning: GDAE, times: {touch-up: 60s, hand-over: 10s}',
				'id: R1, kind: resonator-6, tuning: open G, times: {touch-up: 45s, hand-over: 12s}',
				'id: U1, kind: upright-4, tuning: standard, times: {touch-up: 30s, hand-over: 15s}',
			],
			songs: [
				'id: one, length: "20:00", hands: {ash: A1, bo: B1, cleo: C1}',
				'id: two, length: "3:00", hands: {ash: M1, bo: R1, cleo: U1}',
			],
			set: `one, {song: two, gap: ${gap}}`,
			show: '{title: By hand, recheck-after: 8m}',
		});
	const { cost, plan } = change('40s');
	expect(cost).toEqual({ ...NOTHING, handOvers: 3 });
	expect(plan.pieces.map(({ seconds, from, wanted }) => [seconds, from, wanted])).toEqual([
		[60, 760, 1203],
		[45, 760, 1203],
		[30, 760, 1203],
	]);
	expect(change('36s').cost).toEqual({ ...NOTHING, overGap: 1, handOvers: 3 });
	expect(change('0s').cost.overGap).toBe(3);
});

test('new pitches at any time, the touch-up when it stays fresh: two pieces', () => {
	const { plan } = planned({
		instruments: [`id: A1, ${E}`, `id: A2, ${E}`],
		songs: [
			'id: one, length: "30:00", hands: {ash: A1}',
			'id: two, length: "3:00", hands: {ash: {instrument: A2, tuning: drop D, capo: 2}}',
		],
		set: 'one, two',
	});
	// A change of one string is 60 s with the touch-up in it, the capo 10: 55 s of them last, from 30:15 − 15:00.
	expect(plan.pieces).toMatchObject([
		{ part: 'first', seconds: 15, from: -3600, wanted: 1745 },
		{ part: 'last', seconds: 55, from: 915, wanted: 1800 },
	]);
});

test('straight from one player to another it is on the rack 15 s after the song', () => {
	const { plan, cost } = planned({
		instruments: [`id: A1, ${E}`, `id: A2, ${E}`],
		songs: [
			'id: one, length: "2:00", hands: {ash: A1}',
			'id: two, length: "2:00", hands: {ash: A2, bo: A1}',
		],
		set: 'one, {song: two, gap: 90s}',
	});
	// Both hand-overs begin at 3:00; A1 is back at 2:15 and needs wipe and touch-up.
	expect(plan.pieces).toMatchObject([{ seconds: 60, from: 135, wanted: 180 }]);
	expect(cost).toEqual({ ...NOTHING, lateness: 15 + 30, handOvers: 1 });
});

test('a keeper keeps what another is named, who is substituted', () => {
	const { cost, played } = planned({
		instruments: [`id: A1, ${E}`, `id: A2, ${E}`, `id: S1, ${E}, spare: true`],
		songs: [
			'id: one, length: "5:00", hands: {ash: A1, bo: A2}',
			'id: two, length: "5:00", hands: {bo: A1}',
		],
		set: 'one, two',
	});
	expect(played).toMatchObject({ '1 ash': 'A1 0', '1 bo': 'A2 0' });
	// A2 is in Bo's hands already and stays for nothing.
	expect(cost).toEqual({ ...NOTHING, substituted: 1 });
});

test('of two who are named the same exactly one gets it, and the list of what stands in goes before the kind', () => {
	const named = (instead: string) =>
		planned({
			instruments: [`id: A1, ${E}${instead}`, `id: A2, ${E}`, `id: A3, ${E}`],
			songs: ['id: one, length: "5:00", hands: {ash: A1, bo: A1}'],
			set: 'one',
		});
	expect(named('')).toMatchObject({ cost: { ...NOTHING, substituted: 1, backup: 5 }, count: 4 });
	const listed = named(', instead: [A3, A2]');
	expect(listed).toMatchObject({ cost: { ...NOTHING, substituted: 1 }, count: 2 });
	expect(Object.values(listed.played).sort()).toEqual(['A1 0', 'A3 0', null]);
	expect(named(', instead: []').cost).toEqual({ ...NOTHING, missing: 1 });
	const believed = named(', instead: [{instrument: A2, tuning: open G, capo: 1}]');
	expect(believed.cost).toEqual({ ...NOTHING, substituted: 1, backup: 1, retunings: 1 });
});

test('a floating bridge stays in its tuning, and stands in for itself with a capo', () => {
	const { cost, played } = planned({
		instruments: [
			'id: A3, kind: electric-6, tuning: half-step down, bridge: floating, spare: true',
			`id: A1, ${E}`,
		],
		songs: ['id: one, length: "5:00", hands: {ash: {instrument: A3, tuning: E standard}}'],
		set: 'one',
	});
	expect(played).toMatchObject({ '0 ash': 'A3 1' });
	expect(cost).toEqual({ ...NOTHING, substituted: 1, backup: 1 });
});

test('after an interval who keeps gets the named one back for its backup', () => {
	const songs = [
		'id: one, length: "5:00", hands: {bo: A1, ash: none}',
		'id: two, length: "5:00", hands: {ash: A1}',
		'id: three, length: "5:00", hands: {bo: none}',
	];
	const instruments = [`id: A1, ${E}`, `id: S1, ${E}, spare: true`];
	const through = planned({ instruments, songs, set: 'one, two, three' });
	expect(through.played).toMatchObject({ '1 ash': 'S1 0', '1 bo': 'A1 0', '2 ash': 'S1 0' });
	expect(through.cost).toEqual({ ...NOTHING, substituted: 1 });
	const apart = planned({ instruments, songs, set: 'one, two, {interval: 10m}, three' });
	// The interval has a place of its own in the set.
	expect(apart.played).toMatchObject({ '1 ash': 'S1 0', '3 ash': 'A1 0' });
	expect(apart.cost).toEqual({ ...NOTHING, substituted: 1 });
});

test('a slot for which nothing is free is missing, and who misses more is chosen', () => {
	const needs = '{needs: {kind: electric-6, sounds: E standard}}';
	const { cost, count } = planned({
		instruments: [`id: A1, ${E}`],
		songs: [
			`id: one, length: "5:00", hands: {ash: ${needs}, bo: ${needs}}`,
			'id: two, length: "5:00", hands: {bo: A1}',
		],
		set: 'one, two',
	});
	// Were it Ash's in the first song, he would keep it in the second and Bo miss it twice.
	expect(cost).toEqual({ ...NOTHING, missing: 2 });
	expect(count).toBe(2);
});

test('a capo moves in hands where there is room, and makes a hand-over where there is none', () => {
	const capo = (gap: string) =>
		planned({
			instruments: [`id: A1, ${E}`],
			songs: [
				'id: one, length: "5:00", hands: {ash: A1}',
				'id: two, length: "5:00", hands: {ash: {instrument: A1, capo: 2}}',
			],
			set: `one, {song: two, gap: ${gap}}`,
		}).cost;
	expect(capo('10s')).toEqual(NOTHING);
	// Back at 5:15, wipe, touch-up and capo 70 s; wanted as the song before ends, but its hand-over is on till 5:09.
	expect(capo('9s')).toEqual({ ...NOTHING, overGap: 1, lateness: 85, handOvers: 1 });
});

test('a cue that hands over always has room and fills its seconds before it', () => {
	const { cost, plan } = planned({
		instruments: [`id: A1, ${E}`, `id: A2, ${E}`],
		songs: [
			'id: one, length: "4:00", hands: {ash: A1}, cues: [{at: bridge, hand: {ash: A2}}]',
			'id: two, length: "4:00", hands: {ash: A1}',
		],
		set: 'one, {song: two, gap: 15s}',
	});
	expect(cost).toEqual({ ...NOTHING, handOvers: 2 });
	expect(plan.busy).toEqual([
		{ from: -15, to: 0 },
		{ from: 105, to: 120 },
		{ from: 240, to: 255 },
	]);
	expect(plan.pieces).toMatchObject([{ instrument: 'A1', seconds: 60, from: 120, wanted: 240 }]);
});
