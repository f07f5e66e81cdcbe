// Finding faults: against published examples and against programs that try everything.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { beliefOf, posterior } from '../../src/rig/fault-belief.ts';
import { nextToCause, nextToSound, type Search } from '../../src/rig/fault-search.ts';
import { SYMPTOMS, suspectsOf } from '../../src/rig/fault-suspects.ts';
import { type FaultTest, faultTests } from '../../src/rig/fault-tests.ts';
import { rigShow } from './example-rig.ts';

const chancesOf = (chances: readonly number[]) =>
	chances.map((chance, at) => ({ id: `p${at}`, chance }));

/** Listening behind each part but the last. */
function listens(count: number, seconds: (at: number) => number = () => 1): FaultTest[] {
	return Array.from(
		{ length: count - 1 },
		(_, at): FaultTest => ({
			...{ id: `listen-p${at}`, does: 'listen', at: `p${at}`, restores: false },
			...{ clears: Array.from({ length: count - 1 - at }, (_x, k) => `p${at + 1 + k}`) },
			seconds: seconds(at),
		}),
	);
}

function swaps(costs: readonly number[]): FaultTest[] {
	return costs.map(
		(seconds, at): FaultTest => ({
			...{ id: `swap-p${at}`, does: 'swap', at: `p${at}`, restores: true },
			...{ clears: [`p${at}`], seconds },
		}),
	);
}

describe('half-splitting (US Army correspondence text IT0338, frames 9 to 17)', () => {
	test.each([
		[8, 3],
		[5, 2.4],
		[16, 4],
	])('%d equal parts take %d tests expected', (count, expected) => {
		const suspects = chancesOf(Array(count).fill(1 / count));
		const next = nextToCause({ suspects, tests: listens(count) });
		expect(next?.expectedSeconds).toBeCloseTo(expected, 9);
	});

	test('the first test of eight is at the midpoint', () => {
		const suspects = chancesOf(Array(8).fill(1 / 8));
		expect(nextToCause({ suspects, tests: listens(8) })?.test.id).toBe('listen-p3');
	});
});

describe('the best order of single tries (chance over cost; equals trying every order)', () => {
	test('item 2 first, 4.50 minutes expected', () => {
		const suspects = chancesOf([0.4, 0.3, 0.2, 0.1]);
		const next = nextToSound({ suspects, tests: swaps([4, 1, 2, 1]) });
		expect(next?.test.id).toBe('swap-p1');
		expect(next?.expectedSeconds).toBeCloseTo(4.5, 9);
	});

	test('order 2 5 4 1 3, 35.15 expected', () => {
		const costs = [30, 10, 20, 5, 2];
		let suspects = chancesOf([0.35, 0.3, 0.2, 0.1, 0.05]);
		expect(nextToSound({ suspects, tests: swaps(costs) })?.expectedSeconds).toBeCloseTo(35.15, 9);
		const order: string[] = [];
		for (let next = nextToSound({ suspects, tests: swaps(costs) }); next !== null; ) {
			order.push(next.test.id);
			const { clears } = next.test;
			suspects = suspects.map((one) => (clears.includes(one.id) ? { ...one, chance: 0 } : one));
			next = nextToSound({ suspects, tests: swaps(costs) });
		}
		expect(order).toEqual(['swap-p1', 'swap-p4', 'swap-p3', 'swap-p0', 'swap-p2']);
	});

	test('no order of up to eight single tries is better', () => {
		fc.assert(
			fc.property(
				fc.array(fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 60 })), {
					minLength: 1,
					maxLength: 8,
				}),
				(items) => {
					const sum = items.reduce((total, [weight]) => total + weight, 0);
					const chances = items.map(([weight]) => weight / sum);
					const costs = items.map(([, cost]) => cost);
					const best = Math.min(
						...orders(items.map((_, at) => at)).map((order) => {
							let spent = 0;
							return order.reduce((total, at) => {
								spent += costs[at] ?? 0;
								return total + (chances[at] ?? 0) * spent;
							}, 0);
						}),
					);
					const search = { suspects: chancesOf(chances), tests: swaps(costs) };
					expect(nextToSound(search)?.expectedSeconds).toBeCloseTo(best, 6);
				},
			),
			{ numRuns: 50 },
		);
	});
});

function orders(items: readonly number[]): number[][] {
	if (items.length < 2) return [[...items]];
	return items.flatMap((one) =>
		orders(items.filter((other) => other !== one)).map((rest) => [one, ...rest]),
	);
}

/** Expected seconds of the best strategy, by trying every test at every set of what is left; lists, no bits. */
function bestByTrying(
	left: readonly { id: string; chance: number }[],
	tests: readonly FaultTest[],
	known = new Map<string, number>(),
): number {
	const key = left.map(({ id }) => id).join();
	const before = known.get(key);
	if (before !== undefined) return before;
	const total = left.reduce((sum, { chance }) => sum + chance, 0);
	let best = Number.POSITIVE_INFINITY;
	for (const { clears, seconds } of tests) {
		const inside = left.filter(({ id }) => clears.includes(id));
		const outside = left.filter(({ id }) => !clears.includes(id));
		if (inside.length === 0 || outside.length === 0) continue;
		const share = inside.reduce((sum, { chance }) => sum + chance, 0) / total;
		const after =
			share * bestByTrying(inside, tests, known) +
			(1 - share) * bestByTrying(outside, tests, known);
		best = Math.min(best, seconds + after);
	}
	const least = best === Number.POSITIVE_INFINITY ? 0 : best;
	known.set(key, least);
	return least;
}

test('the least expected seconds to the cause on paths of up to eight parts, every strategy tried', () => {
	fc.assert(
		fc.property(
			fc.integer({ min: 2, max: 8 }).chain((count) =>
				fc.record({
					weights: fc.array(fc.integer({ min: 1, max: 20 }), {
						minLength: count,
						maxLength: count,
					}),
					swapCosts: fc.array(fc.integer({ min: 1, max: 90 }), {
						minLength: count,
						maxLength: count,
					}),
					listenCosts: fc.array(fc.integer({ min: 1, max: 60 }), {
						minLength: count,
						maxLength: count,
					}),
				}),
			),
			({ weights, swapCosts, listenCosts }) => {
				const sum = weights.reduce((total, one) => total + one, 0);
				const suspects = chancesOf(weights.map((one) => one / sum));
				const tests = [
					...swaps(swapCosts),
					...listens(weights.length, (at) => listenCosts[at] ?? 1),
				];
				const best = bestByTrying(suspects, tests);
				expect(nextToCause({ suspects, tests })?.expectedSeconds).toBeCloseTo(best, 6);
			},
		),
		{ numRuns: 60 },
	);
});

describe('Bayes', () => {
	test('the screening example: 1 %, hit 80 %, false alarm 9.6 %', () => {
		expect(posterior([0.01, 0.99], [0.8, 0.096])?.[0]).toBeCloseTo(0.07764, 5);
	});

	test('four causes', () => {
		const chances = posterior([0.5, 0.2, 0.2, 0.1], [0.1, 0.1, 1, 1]) ?? [];
		for (const [at, expected] of [0.1351, 0.0541, 0.5405, 0.2703].entries()) {
			expect(chances[at]).toBeCloseTo(expected, 4);
		}
	});
});

const SHOW =
	rigShow(`instruments: [{id: B1, name: Bay, kind: electric-6, tuning: E standard, pack: P1}]
packs: [{id: P1}]
boards: {bo: [{id: drive}, {id: boost, chance: 8}, {id: delay}]}
rigs:
  bo:
    - {id: lead, kind: cord, swap: 10s}
    - {id: board, kind: board}
    - {id: head, kind: amp, tube: true}
    - {id: cab, kind: cab, ohms: 8}
`);

test('a path has every part once, pedals in the place of their board; chances add up to 1', () => {
	const suspects = suspectsOf(SHOW, { player: 'bo', instrument: 'B1', symptom: 'silent' });
	expect(suspects.map(({ id }) => id)).toEqual([
		'B1',
		'lead',
		'drive',
		'boost',
		'delay',
		'head',
		'cab',
	]);
	expect(suspects.reduce((sum, { prior }) => sum + prior, 0)).toBeCloseTo(1, 12);
	const boost = suspects.find(({ id }) => id === 'boost');
	expect(suspects.every(({ prior }) => prior <= (boost?.prior ?? 0))).toBe(true);
	expect(faultTests(suspects).map(({ id }) => id)).toContain('bypass-board');
});

test('what was just changed and what was found before are likelier', () => {
	const given = { player: 'bo', instrument: 'B1', symptom: 'hum' } as const;
	const headOf = (more: object) =>
		suspectsOf(SHOW, { ...given, ...more }).find(({ id }) => id === 'head')?.prior ?? 0;
	expect(headOf({ changed: ['head'] })).toBeGreaterThan(headOf({}));
	expect(headOf({ found: { head: 2 } })).toBeGreaterThan(headOf({}));
});

test('a player without a rig has the least that there is, and the pack of what is in hands', () => {
	const bare = rigShow(
		'instruments: [{id: B1, kind: electric-6, tuning: E standard, pack: P1}]\npacks: [{id: P1}]',
	);
	const ids = (instrument: string | null) =>
		suspectsOf(bare, { player: 'bo', instrument, symptom: 'silent' }).map(({ id }) => id);
	expect(ids('B1')).toEqual(['B1', 'P1', 'amp']);
	expect(ids(null)).toEqual(['instrument', 'cord', 'amp']);
});

test('after any answers chances add up to 1; contradictions are said and nothing crashes', () => {
	const symptom = fc.constantFrom(...SYMPTOMS);
	fc.assert(
		fc.property(
			symptom,
			fc.array(fc.tuple(fc.nat(30), fc.constantFrom('sound' as const, 'same' as const)), {
				maxLength: 12,
			}),
			(heard, picks) => {
				const suspects = suspectsOf(SHOW, { player: 'bo', instrument: 'B1', symptom: heard });
				const tests = faultTests(suspects);
				const answers = picks.flatMap(([at, answer]) => {
					const one = tests[at % tests.length];
					return one === undefined ? [] : [{ test: one, answer }];
				});
				const { chances, isContradictory } = beliefOf({ suspects, symptom: heard, answers });
				expect(chances.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 9);
				const search: Search = {
					suspects: suspects.map(({ id }, at) => ({ id, chance: chances[at] ?? 0 })),
					tests,
				};
				expect(nextToCause(search)?.expectedSeconds ?? 0).toBeGreaterThanOrEqual(0);
				expect(nextToSound(search)?.expectedSeconds ?? 0).toBeGreaterThanOrEqual(0);
				if (answers.length === 0) expect(isContradictory).toBe(false);
			},
		),
	);
});

test('two answers that no single cause explains', () => {
	const suspects = suspectsOf(SHOW, { player: 'bo', instrument: 'B1', symptom: 'silent' });
	const tests = faultTests(suspects);
	const answers = ['swap-lead', 'swap-head'].flatMap((id) => {
		const one = tests.find((other) => other.id === id);
		return one === undefined ? [] : [{ test: one, answer: 'sound' as const }];
	});
	const { chances, isContradictory } = beliefOf({ suspects, symptom: 'silent', answers });
	expect(isContradictory).toBe(true);
	const likeliest = suspects.toSorted(
		(one, other) => (chances[suspects.indexOf(other)] ?? 0) - (chances[suspects.indexOf(one)] ?? 0),
	);
	expect(
		likeliest
			.slice(0, 2)
			.map(({ id }) => id)
			.toSorted(),
	).toEqual(['head', 'lead']);
});
