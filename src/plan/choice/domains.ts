// What is still possible: for each player and section the hands that may be chosen (the domain of a variable, in
// the words of constraint programming), and what the rest of the night costs that player alone at the least from
// each of them. Asking about one hand narrows a domain, and what no longer leads anywhere goes with it: arc
// consistency on a layered graph (A. K. Mackworth 1977, from memory).

import { bestRests, NO_REST, type Rest, restBefore } from './cost-to-go.ts';
import { RETUNINGS } from './criteria.ts';
import { remembered } from './remembered.ts';
import type { SearchGraph } from './search-graph.ts';
import type { Seat } from './seats.ts';
import type { Step, Steps, StepsInto } from './steps.ts';

export type Domain = {
	/** For each section and hand, 1 where it is still possible. */
	readonly has: Uint8Array;
	/** For each section and hand before it, the rests that cost least; none where nothing leads on. */
	readonly toGo: readonly (readonly Rest[])[];
};

/** For each seat. */
export type Domains = readonly Domain[];

/** One hand of one seat in one section. */
export type HandAt = { readonly seat: number; readonly section: number; readonly hand: number };

/**
 * Everything that the steps lead to.
 *
 * @example
 * allDomains(graph).length // => 3
 */
export function allDomains(graph: SearchGraph): Domains {
	const { seats, sectionCount } = graph.seating;
	return seats.map(({ hands: { length } }, seat) =>
		consistent(graph, seat, {
			has: new Uint8Array(sectionCount * length).fill(1),
			known: { has: new Uint8Array(), toGo: new Array((sectionCount + 1) * length).fill(NO_REST) },
		}),
	);
}

/**
 * What is still possible with this hand there, or without it; null where that is nothing.
 *
 * @example
 * narrowed(graph, allDomains(graph), { at: { seat: 0, section: 0, hand: 2 }, isIt: true }) !== null // => true
 */
export function narrowed(
	graph: SearchGraph,
	domains: Domains,
	{ at, isIt }: { readonly at: HandAt; readonly isIt: boolean },
): Domains | null {
	const { hands, start } = graph.seating.seats[at.seat] as Seat;
	const row = at.section * hands.length;
	const known = domains[at.seat] as Domain;
	const has = known.has.slice();
	if (isIt) has.fill(0, row, row + hands.length);
	has[row + at.hand] = isIt ? 1 : 0;
	const left = consistent(graph, at.seat, { has, known });
	return left.toGo[start]?.length === 0 ? null : domains.with(at.seat, left);
}

/** The domain of a seat without what no step leads to, and what leads nowhere; `known`: a wider one. */
function consistent(
	{ seating, steps: all, weights }: SearchGraph,
	index: number,
	{ has, known }: { readonly has: Uint8Array; readonly known: Domain },
): Domain {
	const steps = all[index] as Steps;
	const { start, hands } = seating.seats[index] as Seat;
	const size = hands.length;
	const retuning = weights.of[RETUNINGS] as number;
	const reached = new Uint8Array(has.length);
	const isFrom = (row: number, hand: number): boolean =>
		row === 0 ? hand === start : reached[row - size + hand] === 1;
	for (const [section, { from }] of steps.entries()) {
		const row = section * size;
		const lists = new Set(from.filter((_, hand) => isFrom(row, hand)).flat());
		for (const some of lists) {
			for (const { to } of some) if (has[row + to] === 1) reached[row + to] = 1;
		}
	}
	const toGo = known.toGo.slice();
	// Of what comes after the last difference nothing changes.
	let last = has.length - 1;
	while (last >= 0 && reached[last] === known.has[last]) last -= 1;
	for (let section = Math.floor(last / size); section >= 0; section -= 1) {
		const row = section * size;
		// The same steps lead on from many hands.
		const restsOf = remembered((some: readonly Step[]) => {
			const possible = some.filter(({ to }) => reached[row + to] === 1);
			const behind = possible.flatMap((step) => {
				const rests = toGo[row + size + step.to] as readonly Rest[];
				return rests.map((rest) => restBefore(step, rest, retuning));
			});
			return bestRests(behind, retuning);
		});
		for (const [hand, some] of (steps[section] as StepsInto).from.entries()) {
			if (!isFrom(row, hand)) continue;
			const [first = [], ...more] = some.map(restsOf).filter(({ length }) => length > 0);
			const rests = more.length === 0 ? first : bestRests([first, ...more].flat(), retuning);
			toGo[row + hand] = rests;
			if (row > 0 && rests.length === 0) reached[row - size + hand] = 0;
		}
	}
	return { has: reached, toGo };
}

/**
 * Whether several hands are possible for a seat in a section.
 *
 * @example
 * isOpen(graph, allDomains(graph), { seat: 2, section: 0 }) // => false
 */
export function isOpen(
	{ seating }: SearchGraph,
	domains: Domains,
	{ seat, section }: Pick<HandAt, 'seat' | 'section'>,
): boolean {
	const size = (seating.seats[seat] as Seat).hands.length;
	const row = (domains[seat] as Domain).has.subarray(section * size, (section + 1) * size);
	return row.indexOf(1) !== row.lastIndexOf(1);
}
