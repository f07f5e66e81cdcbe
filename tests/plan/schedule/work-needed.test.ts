// How long each piece of work takes. The defaults are common practice, no source; what is checked here
// is that they are put together as the work is: wiping, pitches, capo, or new strings instead.

import { describe, expect, test } from 'vitest';
import { workNeeded } from '../../../src/plan/schedule/work-needed.ts';
import { openSession } from '../../../src/session/open-session.ts';
import type { Show } from '../../../src/showfile/show.ts';
import { readTuning } from '../../../src/tuning/tuning.ts';
import { tuningExpectedWords } from '../../../src/words/unread-tuning.ts';
import { showFrom } from '../show-from.ts';

const show = showFrom(`
players: [{id: ash, name: Ash}]
times: {bass-4: {touch-up: 30s}}
instruments:
  - {id: E, name: E, slot: "1", kind: electric-6, tuning: E standard}
  - {id: F, name: F, slot: "2", kind: electric-6, tuning: E standard, bridge: floating}
  - {id: T, name: T, slot: "3", kind: electric-12, tuning: E standard}
  - {id: M, name: M, slot: "4", kind: mandolin-8, tuning: GDAE}
  - {id: C, name: C, slot: "5", kind: bass-4, tuning: E standard}
  - {id: U, name: U, slot: "6", kind: upright-4, tuning: E standard}
  - {id: Q, name: Q, slot: "7", kind: electric-6, tuning: E standard, times: {touch-up: 20s, restring: 3m}}
songs: [{id: one, title: One}]
set: [one]
`);

type Now = {
	readonly isToWipe?: boolean;
	readonly capo?: number;
	readonly stringsDown?: readonly null[];
};

function secondsFor(id: string, to: string, { capo = 0, now = {} }: { capo?: number; now?: Now }) {
	return needed(show, { id, to, capo, now }).seconds;
}

function needed(of: Show, asked: { id: string; to: string; capo: number; now: Now }) {
	const instrument = of.instruments.find((one) => one.id === asked.id)!;
	const state = openSession(of).instruments[asked.id]!;
	const reading = readTuning(asked.to, instrument.kind, {});
	if (!reading.ok) throw new Error(`${asked.to}: ${tuningExpectedWords(reading.unread)}`);
	return workNeeded({
		instrument,
		state: { ...state, context: { ...state.context, ...asked.now } },
		to: { tuning: reading.tuning, capo: asked.capo },
	});
}

describe('from E standard, on the rack and wiped', () => {
	test.each([
		['E', 'E standard', 45],
		['E', 'drop D', 60],
		['E', 'double drop D', 75],
		['E', 'half-step down', 90],
		['E', 'D standard', 90],
		['E', 'open G', 120],
		['E', 'DADGAD', 120],
		['E', 'drop C', 120],
		['T', 'E standard', 180],
		['T', 'drop D', 195],
		['T', 'half-step down', 360],
		['M', 'GDAE', 60],
		['M', 'G3 D4 A4 D5', 75],
		['C', 'E standard', 30],
		['C', 'drop D', 45],
		['U', 'E standard', 40],
		['Q', 'E standard', 20],
		['Q', 'half-step down', 40],
		['Q', 'DADGAD', 95],
	])('%s to %s takes %i s', (id, to, seconds) => {
		expect(secondsFor(id, to, {})).toBe(seconds);
	});
});

test('what has been in hands is wiped first', () => {
	expect(secondsFor('E', 'E standard', { now: { isToWipe: true } })).toBe(60);
	expect(secondsFor('E', 'drop D', { now: { isToWipe: true } })).toBe(75);
});

test('a capo put on, moved or taken off takes ten seconds and a touch-up', () => {
	expect(secondsFor('E', 'E standard', { capo: 3 })).toBe(55);
	expect(secondsFor('E', 'E standard', { capo: 3, now: { capo: 2 } })).toBe(55);
	expect(secondsFor('E', 'E standard', { now: { capo: 2 } })).toBe(55);
	expect(secondsFor('E', 'E standard', { capo: 2, now: { capo: 2 } })).toBe(45);
	expect(secondsFor('E', 'drop D', { capo: 2, now: { isToWipe: true } })).toBe(85);
});

test('new strings stand in place of everything but the capo and what another tuning takes on top', () => {
	const one = { stringsDown: [null], isToWipe: true, capo: 2 };
	expect(secondsFor('E', 'E standard', { capo: 2, now: one })).toBe(270);
	expect(secondsFor('E', 'E standard', { now: one })).toBe(280);
	expect(secondsFor('E', 'drop D', { now: one })).toBe(295);
	expect(secondsFor('E', 'DADGAD', { now: one })).toBe(355);
	expect(secondsFor('E', 'E standard', { now: { stringsDown: [null, null, null] } })).toBe(450);
	expect(secondsFor('F', 'E standard', { now: one })).toBe(655);
	expect(secondsFor('Q', 'drop D', { now: one })).toBe(205);
});

test('the job is named for the most that it is', () => {
	const job = (to: string, capo: number, now: Now) => needed(show, { id: 'E', to, capo, now }).job;
	expect(job('E standard', 0, { isToWipe: true })).toBe('touch-up');
	expect(job('E standard', 2, {})).toBe('capo');
	expect(job('drop D', 2, {})).toBe('retune');
	expect(job('drop D', 2, { stringsDown: [null] })).toBe('restring');
});
