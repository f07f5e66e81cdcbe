// What is called sure lateness is there whatever is chosen of what is possible: on small shows made up by
// chance, and on nights with strings down, intervals and swaps too, which no enumeration covers.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { choicesOf } from '../../../src/plan/choice/choices.ts';
import type { Hands } from '../../../src/plan/choice/count-hands.ts';
import type { Possible, SearchGraph } from '../../../src/plan/choice/search-graph.ts';
import { allPossible, possibleWith, searchGraph } from '../../../src/plan/choice/search-graph.ts';
import { seatingOf } from '../../../src/plan/choice/seats.ts';
import { type Outlook, outlookOf } from '../../../src/plan/demand/outlook.ts';
import type { Moment } from '../../../src/plan/demand/sections-ahead.ts';
import { type Weighed, weigh } from '../../../src/plan/schedule/schedule.ts';
import { momentBefore, readyAtZero } from '../../../src/plan/timed-choice/before-doors.ts';
import { sureLatenessMs } from '../../../src/plan/timed-choice/sure-work.ts';
import { smallShow } from '../independent/small-show.ts';
import { type Chance, chance } from '../oracle/chance.ts';
import { randomNight } from '../random-night.ts';

const numRuns = Number(process.env.PLAN_RUNS ?? 200);
const SHOWS = Number(process.env.PLAN_SHOWS ?? 200);
const WALKS = 8;
/** How often it is just as late as that, where all is chosen and nothing used is used again. */
const LEAST_TIGHT = 0.95;

function graphOf(moment: Moment): SearchGraph {
	return searchGraph(seatingOf(outlookOf(moment), null));
}

/** What is left after some hands were asked for or ruled out by chance. */
function narrowed(graph: SearchGraph, dice: Chance): Possible {
	const { seats, sectionCount } = graph.seating;
	let possible = allPossible(graph);
	for (let left = dice.below(8); left > 0 && sectionCount > 0; left -= 1) {
		const seat = dice.below(seats.length);
		const section = dice.below(sectionCount);
		const hand = dice.of(handsPossible(graph, possible, { seat, section }));
		possible =
			possibleWith(graph, possible, {
				at: { seat, section, hand },
				isIt: dice.is(0.4),
			}) ?? possible;
	}
	return possible;
}

type At = { readonly seat: number; readonly section: number };

function handsPossible(graph: SearchGraph, possible: Possible, { seat, section }: At): number[] {
	const size = graph.seating.seats[seat]!.hands.length;
	return [...Array(size).keys()].filter((hand) => possible[seat]![section * size + hand] === 1);
}

/** A walk by chance through what is possible, nothing in two hands; null where it ends early. */
function walk(graph: SearchGraph, possible: Possible, dice: Chance): Hands | null {
	const { seats, sectionCount } = graph.seating;
	const hands = seats.map(() => new Int16Array(sectionCount));
	const now = seats.map(({ start }) => start);
	for (let section = 0; section < sectionCount; section += 1) {
		const taken = new Set<number>();
		for (const [seat, { instrumentOf }] of seats.entries()) {
			const { first, to, size } = graph.steps[seat]!;
			const from = section * size + now[seat]!;
			const open = [...to.subarray(first[from]!, first[from + 1]!)].filter(
				(hand) => possible[seat]![section * size + hand] === 1 && !taken.has(instrumentOf[hand]!),
			);
			if (open.length === 0) return null;
			const hand = dice.of(open);
			now[seat] = hand;
			hands[seat]![section] = hand;
			if (instrumentOf[hand]! >= 0) taken.add(instrumentOf[hand]!);
		}
	}
	return hands;
}

/** Everything but these hands ruled out. */
function onlyThese(graph: SearchGraph, hands: Hands): Possible {
	return hands.map((mine, seat) => {
		const size = graph.seating.seats[seat]!.hands.length;
		const only = new Uint8Array(mine.length * size);
		for (const [section, hand] of mine.entries()) only[section * size + hand] = 1;
		return only;
	});
}

type Tried = { late: number; first: number; tight: number };

function tryOut(graph: SearchGraph, dice: Chance, tried: Tried): void {
	const { seating } = graph;
	const possible = narrowed(graph, dice);
	const sureMs = sureLatenessMs(graph, possible);
	expect(sureLatenessMs(graph, allPossible(graph))).toBeLessThanOrEqual(sureMs);
	for (let left = WALKS; left > 0; left -= 1) {
		const hands = walk(graph, possible, dice);
		if (hands === null) continue;
		const schedule = weigh(seating.outlook, choicesOf(seating, hands));
		const ownMs = sureLatenessMs(graph, onlyThese(graph, hands));
		expect(sureMs).toBeLessThanOrEqual(ownMs);
		expect(ownMs).toBeLessThanOrEqual(schedule.latenessMs);
		if (schedule.latenessMs === 0) continue;
		tried.late += 1;
		if (!isFirstUse(seating.outlook, schedule)) continue;
		tried.first += 1;
		if (ownMs === schedule.latenessMs) tried.tight += 1;
	}
}

/** No work is for what has been in hands before: it counts as back as soon as it may be, not when it is. */
function isFirstUse({ hands, heldBefore }: Outlook, { stints }: Weighed): boolean {
	const used = [...stints.map(({ hand }) => hand), ...hands.values(), ...heldBefore.values()]
		.filter((hand) => hand !== null)
		.map(({ instrument }) => instrument);
	return new Set(used).size === used.length;
}

describe('no choice is less late than what is sure of all that is possible, nor is that where all is chosen', () => {
	test(`in ${SHOWS} small shows`, () => {
		const tried = { late: 0, first: 0, tight: 0 };
		for (let seed = 0; seed < SHOWS; seed += 1) {
			const graph = graphOf(momentBefore(readyAtZero(smallShow(seed))));
			tryOut(graph, chance(seed), tried);
		}
		expect(tried.late).toBeGreaterThan(SHOWS);
	});

	test('on nights of all kinds', () => {
		const tried = { late: 0, first: 0, tight: 0 };
		fc.assert(
			fc.property(randomNight, fc.nat(), (night, seed) => {
				tryOut(graphOf({ ...night, plannedZeroMs: 0 }), chance(seed), tried);
			}),
			{ numRuns },
		);
		expect(tried.late).toBeGreaterThan(numRuns);
		expect(tried.first).toBeGreaterThan(numRuns / 20);
		expect(tried.tight).toBeGreaterThanOrEqual(LEAST_TIGHT * tried.first);
	});
}, 120_000);
