// Faults simulated on a rig of twenty parts: tests and seconds until the cause is known, by the least expected
// time, beside listening and beside trying parts from the strings to the desk, and beside trying the likeliest first.

import { suspectsOf } from '../../src/rig/fault-suspects.ts';
import { type FaultTest, faultTests } from '../../src/rig/fault-tests.ts';
import { faultStep } from '../../src/rig/find-fault.ts';
import { showFrom } from '../showfile/show-files.ts';
import { median, workMs } from './rounds.ts';

const PEDALS = 11;

const SHOW = showFrom(`format: rackside/1
players: [{id: bo, name: Bo}]
instruments: [{id: B1, kind: electric-6, tuning: E standard}]
songs: [{id: one, hands: {bo: B1}}]
set: [one]
boards: {bo: [${Array.from({ length: PEDALS }, (_, at) => `{id: p${at}, swap: ${40 + at * 5}s}`).join(', ')}]}
rigs:
  bo:
    - {id: lead, kind: cord}
    - {id: board, kind: board}
    - {id: back, kind: cord}
    - {id: split, kind: splitter}
    - {id: pre, kind: preamp}
    - {id: send, kind: cord}
    - {id: head, kind: amp}
    - {id: speaker, kind: cord}
    - {id: cab, kind: cab}
`);

const ABOUT = { player: 'bo', instrument: 'B1', symptom: 'silent' } as const;

type Found = { readonly tests: number; readonly seconds: number };

export async function benchFault(rounds: number): Promise<readonly string[]> {
	const suspects = suspectsOf(SHOW, ABOUT);
	const priors = suspects.map(({ prior }) => prior);
	const swaps = faultTests(suspects).filter(({ does }) => does === 'swap');
	const byChance = swaps.toSorted((one, other) => chanceOf(other) - chanceOf(one));
	function chanceOf({ at }: FaultTest): number {
		return suspects.find(({ id }) => id === at)?.prior ?? 0;
	}
	const ways = [
		{ name: 'least expected time', found: suspects.map(({ id }) => sought(id)) },
		{ name: 'listening from the strings to the desk', found: suspects.map((_, at) => heard(at)) },
		{
			name: 'swapping from the strings to the desk',
			found: suspects.map(({ id }) => inOrder(swaps, id)),
		},
		{
			name: 'swapping the likeliest first',
			found: suspects.map(({ id }) => inOrder(byChance, id)),
		},
	];
	const first = median(
		Array.from({ length: rounds }, () =>
			workMs(() => faultStep(SHOW, ABOUT, { aim: 'cause', answers: [] })),
		),
	);
	return [
		...ways.map(({ name, found }) => {
			const mean = (of: (one: Found) => number) =>
				found.reduce((sum, one, at) => sum + (priors[at] ?? 0) * of(one), 0);
			const worst = (of: (one: Found) => number) => Math.max(...found.map(of));
			return `fault of ${suspects.length} parts, ${name}: ${mean(({ tests }) => tests).toFixed(1)} tests, ${mean(({ seconds }) => seconds).toFixed(0)} s in the mean, ${worst(({ tests }) => tests)} tests, ${worst(({ seconds }) => seconds).toFixed(0)} s at worst`;
		}),
		`fault of ${suspects.length} parts, first test chosen in ${first.toFixed(1)} ms`,
	];
}

/** Answers as a rig with this one cause gives them. */
function sought(cause: string): Found {
	const answers: { readonly test: string; readonly answer: 'sound' | 'same' }[] = [];
	let seconds = 0;
	for (;;) {
		const { next } = faultStep(SHOW, ABOUT, { aim: 'cause', answers });
		if (next === null) return { tests: answers.length, seconds };
		seconds += next.seconds;
		answers.push({ test: next.id, answer: next.clears.includes(cause) ? 'sound' : 'same' });
	}
}

/** Behind one part after the other until it is wrong; behind the last there is the desk, where it is. */
function heard(cause: number): Found {
	const listens = faultTests(suspectsOf(SHOW, ABOUT)).filter(({ does }) => does === 'listen');
	const tried = listens.slice(0, cause + 1);
	return { tests: tried.length, seconds: tried.reduce((sum, one) => sum + one.seconds, 0) };
}

/** One after the other until there is sound. */
function inOrder(swaps: readonly FaultTest[], cause: string): Found {
	const at = swaps.findIndex(({ clears }) => clears.includes(cause));
	const tried = swaps.slice(0, at + 1);
	return { tests: tried.length, seconds: tried.reduce((sum, one) => sum + one.seconds, 0) };
}
