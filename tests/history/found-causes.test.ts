// What was at fault on earlier nights makes it likelier next time, and says so.

import { expect, test } from 'vitest';
import { foundCauses, timesFound } from '../../src/history/found-causes.ts';
import { suspectsOf } from '../../src/rig/fault-suspects.ts';
import { faultStep } from '../../src/rig/find-fault.ts';
import { whyWords } from '../../src/words/fault.ts';
import { rigShow } from '../rig/example-rig.ts';

const show = rigShow(`instruments: [{id: B1, kind: electric-6, tuning: E standard}]
rigs:
  bo: [{id: lead, kind: cord, chance: 1}, {id: box, kind: direct-box, chance: 1}, {id: head, kind: amp, chance: 1}]
`);
const about = { player: 'bo', instrument: null, symptom: 'silent' } as const;

test('the causes of a night, by the search that found them', () => {
	const sought = { k: 'fault-sought', at: 0, player: 'bo', symptom: 'hum' } as const;
	const records = [
		{ id: 'a:1', e: [sought] },
		{ id: 'b:1', e: [{ ...sought, player: 'ash' }] },
		{ id: 'a:2', e: [{ k: 'fault-found', at: 1, fault: 'a:1', part: 'lead' } as const] },
		{ id: 'a:3', e: [{ k: 'fault-found', at: 1, fault: 'gone', part: 'lead' } as const] },
	];
	expect(foundCauses(records)).toEqual([{ player: 'bo', part: 'lead' }]);
});

test('a part is the same by player and folder, an instrument by its identity wherever it was', () => {
	const cause = (player: string, part: string) => ({ player, part });
	const nights = [
		{
			folder: '/a',
			gears: { B1: 'gear oak' },
			causes: [cause('bo', 'lead'), cause('ash', 'lead')],
		},
		{ folder: '/b', gears: { X9: 'gear oak' }, causes: [cause('cleo', 'X9'), cause('bo', 'lead')] },
		{ folder: '/a', gears: { B1: 'file B1 /a' }, causes: [cause('bo', 'B1')] },
	];
	const now = { player: 'bo', folder: '/a', gears: { B1: 'gear oak' } };
	expect(timesFound(nights, now)).toEqual({ lead: 1, B1: 1 });
});

test('with equal chances the rule of succession: (found + 1) / (all found + parts)', () => {
	// Laplace, Essai philosophique sur les probabilités, 1814; here with four parts, as the Dirichlet mean has it.
	const found = { lead: 2, head: 1 };
	const even = rigShow(`instruments: [{id: B1, kind: electric-6, tuning: E standard}]
rigs: {bo: [{id: lead, kind: cord, chance: 1}, {id: box, kind: direct-box, chance: 1}, {id: head, kind: amp, chance: 1}]}
`);
	const weights = suspectsOf(even, { ...about, found }).map(({ prior }) => prior);
	// The instrument's own weight for silence is 2 beside ones: shares of four thought of as seen.
	const thought = [2, 1, 1, 1].map((chance) => (chance / 5) * 4);
	const counted = [0, 2, 0, 1];
	const expected = thought.map((one, at) => (one + (counted[at] ?? 0)) / 7);
	for (const [at, one] of expected.entries()) expect(weights[at]).toBeCloseTo(one, 12);
});

test('chances on another scale count the same against what was found', () => {
	const scaled = (by: number) =>
		suspectsOf(
			rigShow(`instruments: [{id: B1, kind: electric-6, tuning: E standard}]
rigs: {bo: [{id: lead, kind: cord, chance: ${3 * by}}, {id: head, kind: amp, chance: ${by}}]}
boards: {bo: [{id: drive, chance: ${by}}]}
`),
			{ ...about, instrument: null, found: { drive: 3 } },
		).map(({ id, prior }) => [id, prior] as const);
	const [whole, half] = [Object.fromEntries(scaled(1)), Object.fromEntries(scaled(0.5))];
	expect(whole.lead! / whole.head!).toBeCloseTo(3, 12);
	expect(half.lead! / half.head!).toBeCloseTo(3, 12);
	// Three faults seen outweigh a cord thought three times as likely, on either scale.
	for (const by of [whole, half]) expect(by.drive).toBe(Math.max(...Object.values(by)));
	// What the file gives no chance keeps its usual one: beside smaller ones it counts for more.
	expect(whole.instrument).toBeLessThan(half.instrument!);
});

test('the reason names what was found before', () => {
	const step = faultStep(show, { ...about, found: { lead: 2 } }, { aim: 'cause', answers: [] });
	const swap = step.tests.find(({ id }) => id === 'swap-lead')!;
	expect(whyWords(swap, step)).toMatch(/^helps in \d+ of \d+ cases, found 2 times before, 15 s$/);
	const straight = step.tests.find(({ id }) => id === 'straight')!;
	expect(whyWords(straight, step)).toContain('found there 2 times before');
	const bare = faultStep(show, about, { aim: 'cause', answers: [] });
	expect(whyWords(bare.tests.find(({ id }) => id === 'swap-lead')!, bare)).not.toContain('before');
});
