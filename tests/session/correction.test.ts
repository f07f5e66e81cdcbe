// An exchange shortly after a recorded hand-over says what it really was: given this history, when that
// is asked, then so the hands are. How long it may be corrected is our own choice, no source.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { applyAll } from '../../src/session/apply.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import { loadShow } from '../scenarios/load-show.ts';

const show = loadShow(join(import.meta.dirname, '../scenarios/shows/break.yaml'));

function given(...asked: readonly (readonly [number, Command])[]): Session {
	return asked.reduce((session, [seconds, command]) => {
		const decision = decide(session, command, seconds * 1000);
		if (!decision.ok) throw new Error(decision.why.code);
		return applyAll(session, decision.entries);
	}, openSession(show));
}

const plan = (instrument: string, capo = 0): Command => ({
	do: 'hand-over',
	handOvers: [{ player: 'ash', instrument, tuning: null, capo }],
});
const really = (instrument: string | null): Command => ({
	do: 'exchange',
	player: 'ash',
	instrument,
});
const step: Command = { do: 'step', handOvers: [] };

test('what the plan said was given is on the rack again as it was, and the other has its time', () => {
	const session = given([0, { do: 'make-all-ready' }], [10, plan('A1')], [40, really('A2')]);
	expect(session.players.ash).toMatchObject({ holds: 'A2', sinceMs: 10_000 });
	expect(session.instruments.A1).toMatchObject({
		value: 'racked',
		context: { readyAtMs: 0, isToWipe: false },
	});
});

test('it may name what was held before', () => {
	const session = given([0, plan('A1')], [100, plan('A4')], [130, really('A1')]);
	expect(session.players.ash).toMatchObject({ holds: 'A1', sinceMs: 100_000 });
	expect(session.instruments.A4?.value).toBe('racked');
});

test('a guitar handed back with another capo is in nobody’s hands when it was really another', () => {
	const session = given([0, plan('A1')], [100, plan('A1', 2)], [120, really('A2')]);
	expect(session.players.ash?.holds).toBe('A2');
	expect(session.instruments.A1?.value).toBe('racked');
});

test('after a minute, or after an exchange, it is a new exchange', () => {
	const late = given([0, plan('A1')], [61, really('A2')]);
	expect(late.players.ash).toMatchObject({ holds: 'A2', sinceMs: 61_000 });
	const twice = given([0, plan('A1')], [10, really('A2')], [20, really('A4')]);
	expect(twice.players.ash).toMatchObject({ holds: 'A4', sinceMs: 20_000 });
	expect(twice.instruments.A2?.context.isToWipe).toBe(true);
});

test('a stand-in that was another one is put right in the incident too', () => {
	const session = given(
		[0, step],
		[1, plan('A1')],
		[100, { do: 'report-break', instrument: 'A1' }],
		[110, { do: 'stand-in', instrument: 'S1', tuning: null, capo: null }],
		[130, really('A3')],
	);
	expect(session.players.ash).toMatchObject({ holds: 'A3', sinceMs: 110_000 });
	expect(session.incidents[0]).toMatchObject({ standIn: 'A3', silenceSeconds: 10 });
	expect(session.instruments.S1?.value).toBe('racked');
	expect(session.instruments.A1?.value).toBe('onBench');
});

test('a break that nobody answered is answered by what the next song hands over', () => {
	const handed: Command = {
		do: 'step',
		handOvers: [{ player: 'ash', instrument: 'S1', tuning: null, capo: 0 }],
	};
	const session = given(
		[0, step],
		[1, plan('A1')],
		[100, { do: 'report-break', instrument: 'A1' }],
		[240, step],
		[255, handed],
	);
	expect(session.players.ash?.holds).toBe('S1');
	// They played on until then, so nobody knows of any silence.
	expect(session.incidents[0]).toMatchObject({
		isOpen: false,
		standIn: 'S1',
		silenceSeconds: null,
	});
});

test('one that enter answers in the same song has its silence', () => {
	const session = given(
		[0, step],
		[1, plan('A1')],
		[100, { do: 'report-break', instrument: 'A1' }],
		[110, plan('S1')],
	);
	expect(session.incidents[0]).toMatchObject({ isOpen: false, standIn: 'S1', silenceSeconds: 10 });
});
