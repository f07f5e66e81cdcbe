// Enter and space where a player stays on what they have: the plan says who, the keys record it with the rest.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { handOver } from '../../src/keys/hand-over-actions.ts';
import type { KeyContext, Outcome } from '../../src/keys/key-context.ts';
import { stepCommand } from '../../src/keys/step-commands.ts';
import { makePlan } from '../../src/plan/make-plan.ts';
import type { Plan, Stay } from '../../src/plan/plan.ts';
import { applyAll } from '../../src/session/apply.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import { loadShow } from '../scenarios/load-show.ts';

const show = loadShow(join(import.meta.dirname, '../scenarios/shows/opening.yaml'));
const SECOND = 1000;

function after(session: Session, seconds: number, command: Command): Session {
	const decision = decide(session, command, seconds * SECOND);
	if (!decision.ok) throw new Error(decision.why.code);
	return applyAll(session, decision.entries);
}

const exchange = (player: string, instrument: string): Command => ({
	do: 'exchange',
	player,
	instrument,
});
/** Harbour on, everybody with theirs; Lantern comes, for which Ash is to stay on A1 with capo 2. */
const on = [exchange('ash', 'A1'), exchange('bo', 'B1'), exchange('cleo', 'C1')].reduce(
	(now, command) => after(now, 0, command),
	after(openSession(show), 0, { do: 'step', handOvers: [] }),
);
const between = after(on, 240, { do: 'step', handOvers: [] });

function contextOf(session: Session, seconds: number): KeyContext {
	const nowMs = seconds * SECOND;
	const made = makePlan({ session, nowMs, plannedZeroMs: 0 });
	const section = made.sections.find(({ song, point }) => song === 'lantern' && point === 0);
	const tuning = session.instruments.A1?.context.tuning;
	if (section === undefined || tuning === undefined) throw new Error('Lantern is not to come');
	const stay: Stay = {
		section,
		player: 'ash',
		instrument: 'A1',
		tuning,
		capo: 2,
		for: 'A4',
	};
	const handOvers = made.handOvers.filter(({ player }) => player !== 'ash');
	const plan: Plan = { ...made, handOvers, stays: [stay] };
	return {
		session,
		plan,
		nowMs,
		plannedZeroMs: 0,
		view: 'live',
		picked: 0,
		keyOf: (action: string) => action,
	} as unknown as KeyContext;
}

const commandOf = (outcome: Outcome): Command => {
	if (outcome.kind !== 'command') throw new Error(`${outcome.kind} is no command`);
	return outcome.command;
};

test('between songs enter records it, and once only', () => {
	const context = contextOf(between, 245);
	const stayed = after(between, 245, commandOf(handOver.act(context)));
	expect(stayed.instruments.A1?.context.capo).toBe(2);
	expect(stayed.players.ash).toMatchObject({ holds: 'A1', sinceMs: 0 });
	expect(handOver.whyNot?.(contextOf(stayed, 246))).toMatch(/^No hand-over before the next song/);
});

test('while a song is on it is named first, with what it stands in for, and recorded by the second', () => {
	const context = contextOf(on, 100);
	const asked = handOver.act(context);
	if (asked.kind !== 'prompt') throw new Error('nothing is asked');
	const { title, lines } = asked.prompt.view(context);
	expect(title).toContain('For Lantern (next): enter again');
	expect(lines).toEqual(['Ash keeps 1 Amber, CAPO 2, backup for 4 Acorn']);
	const outcome = asked.prompt.press('enter', context);
	expect(outcome).toMatchObject({ isStampedNow: true });
	expect(after(on, 101, commandOf(outcome)).staying).toEqual({ item: '2', players: ['ash'] });
});

test('space records it with the song’s start, where enter did not', () => {
	const begun = after(between, 255, stepCommand(contextOf(between, 255)));
	expect(begun.instruments.A1?.context.capo).toBe(2);
	expect(begun.settled).toEqual({ item: '2', players: { ash: 0 } });
});
