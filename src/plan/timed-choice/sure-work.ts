// How late the work is at least, whatever is chosen of what is still possible: a lower bound. Of the work for one
// choice it keeps what is there in all of them, for stints that surely begin with what surely was in these hands
// last, and asks how late that is as if it could be put down for other work (the preemptive one-machine bound;
// J. Carlier 1982, from memory).

import { type Domain, type Domains, type HandAt, isOpen } from '../choice/domains.ts';
import type { SearchGraph } from '../choice/search-graph.ts';
import type { Seat } from '../choice/seats.ts';
import type { Step } from '../choice/steps.ts';
import type { Section } from '../plan.ts';
import type { Choice } from '../schedule/choice.ts';
import { busyWindows, freeClock } from '../schedule/free-clock.ts';
import { beginningMs } from '../schedule/hand-overs-ahead.ts';
import { jackson, startingAt } from '../schedule/one-machine.ts';
import { onFreeClock } from '../schedule/order-work.ts';
import type { Weighed } from '../schedule/schedule.ts';

/**
 * Milliseconds by which the latest work is late at the least; `weighed`: any choice of these domains.
 *
 * @example
 * sureLatenessMs(graph, allDomains(graph), weighed) // => 0
 */
export function sureLatenessMs(graph: SearchGraph, domains: Domains, weighed: Weighed): number {
	const { sure, windows } = sureStints(graph, domains, weighed);
	const { outlook } = graph.seating;
	const wanted = new Map(weighed.handOvers.map(({ section, wantedMs }) => [section, wantedMs]));
	const pieces = weighed.pieces.flatMap((piece) => {
		const { choice } = piece.stint;
		const { section } = choice;
		if (!sure.has(choice)) return [];
		// With fewer hand-overs before the same song they begin later.
		const laterMs = (windows.get(section) ?? 0) - (wanted.get(section) ?? 0);
		return [{ ...piece, dueMs: piece.dueMs + Math.max(0, laterMs) }];
	});
	if (pieces.length === 0) return 0;
	const busy = [...windows].map(([section, wantedMs]) => ({ section, wantedMs }));
	const clock = freeClock(busyWindows(outlook.cues, busy));
	const waiting = startingAt(clock.at(outlook.nowMs), onFreeClock(pieces, clock));
	return Math.round(Math.max(0, jackson(waiting, { isPreemptive: true }).latenessMs));
}

type Sure = {
	/** The choices whose stint and the work for it are there in every other choice too. */
	readonly sure: ReadonlySet<Choice>;
	/** When the hand-overs that are sure begin, by their section. */
	readonly windows: ReadonlyMap<Section, number>;
};

function sureStints(graph: SearchGraph, domains: Domains, { choices }: Weighed): Sure {
	const { outlook, seats } = graph.seating;
	const sure = new Set<Choice>();
	const windows = new Map<Section, number>();
	/** What may have been in other hands since it surely was in some, or put down at another moment. */
	const unsure = new Set<number>();
	outlook.sections.forEach((section, place) => {
		let seconds = 0;
		const begun = seats.flatMap(({ start }, seat) => {
			const at = { seat, section: place };
			const steps = stepsInto(graph, domains, at);
			const [step] = steps;
			const isSure = step !== undefined && steps.every(({ begins }) => begins);
			if (isSure) seconds += Math.min(...steps.map((one) => one.seconds));
			if (isOpen(graph, domains, at)) {
				for (const one of steps) unsure.add(one.instrument);
				const before = place === 0 ? [] : stepsInto(graph, domains, { seat, section: place - 1 });
				for (const one of before) unsure.add(one.instrument);
				if (place === 0) unsure.add(seats[seat]?.instrumentOf[start] as number);
				return [];
			}
			return isSure ? [{ step, choice: choices[place * seats.length + seat] as Choice }] : [];
		});
		for (const { step, choice } of begun) {
			if (!unsure.has(step.instrument)) sure.add(choice);
		}
		// What it was before does not matter any more.
		for (const { step } of begun) unsure.delete(step.instrument);
		if (seconds > 0) {
			windows.set(section, section.hasBegun ? outlook.nowMs : beginningMs(section, seconds));
		}
	});
	return { sure, windows };
}

/** The steps that may be taken into a section. */
function stepsInto(
	{ steps, seating }: SearchGraph,
	domains: Domains,
	{ seat, section }: Omit<HandAt, 'hand'>,
): readonly Step[] {
	const { start, hands } = seating.seats[seat] as Seat;
	const { has } = domains[seat] as Domain;
	const row = section * hands.length;
	const into: Step[] = [];
	for (const [before, all] of (steps[seat]?.[section]?.from ?? []).entries()) {
		const isFrom = section === 0 ? before === start : has[row - hands.length + before] === 1;
		if (isFrom) for (const step of all.flat()) if (has[row + step.to] === 1) into.push(step);
	}
	return into;
}
