// A night played just as its plan has it: work done when planned, every hand-over made, nothing broken.
// What the rack is like at any of its moments is then a matter of looking.

import { cueIndex } from '../../../machines/song.ts';
import { applyAll } from '../../session/apply.ts';
import type { Command } from '../../session/command.ts';
import { endOfSong } from '../../session/decide-songs.ts';
import type { Session } from '../../session/session.ts';
import type { Plan, Section, Work } from '../plan.ts';
import { sessionAfter } from './what-if.ts';

export type Reached = {
	readonly section: Section;
	/** Just before its hand-overs are made. */
	readonly before: Session;
	/** It has begun, and they are made. */
	readonly session: Session;
};

/**
 * The night as each section of the plan begins, its hand-overs just made, in playing order. `session` is
 * what the plan began with.
 *
 * @example
 * playedThrough(session, plan).map(({ session }) => session.players.ash.holds) // => ['A1', 'A4', 'A1']
 */
export function playedThrough(session: Session, plan: Plan): readonly Reached[] {
	const known = playedBefore.get(plan.slots);
	if (known?.session === session) return known.reached;
	const reached = playedOnce(session, plan);
	playedBefore.set(plan.slots, { session, reached });
	return reached;
}

/** By the slots of the plan: whoever asks what it comes to asks at several moments. */
const playedBefore = new WeakMap<
	Plan['slots'],
	{ readonly session: Session; readonly reached: readonly Reached[] }
>();

function playedOnce(session: Session, plan: Plan): readonly Reached[] {
	const undone = [...plan.work].sort((one, other) => one.finishMs - other.finishMs);
	// Nothing that is asked of it goes by the boards.
	let now: Session = { ...session, boards: {} };
	return plan.sections.map((section, index) => {
		const { point, startMs } = section;
		const endMs = section.previousEndMs ?? startMs;
		if (point === 0 && index > 0) {
			now = withWork(now, undone, endMs);
			now = applyAll(now, endOfSong(now, 'played', endMs));
		}
		now = withWork(now, undone, startMs);
		while (point > 0 && now.song !== null && cueIndex(now.song) < point - 1) {
			now = after(now, startMs, { do: 'step', handOvers: [] });
		}
		const before = now;
		now = after(now, startMs, {
			do: 'step',
			handOvers: plan.handOvers.filter((one) => one.section === section),
			capoMoves: plan.capoMoves.filter((one) => one.section === section),
		});
		return { section, before, session: now };
	});
}

/** What cannot be done as planned, work on what was handed late above all, is left as it is. */
function after(session: Session, nowMs: number, command: Command): Session {
	return sessionAfter({ session, nowMs }, [command]) ?? session;
}

/** Takes from `undone` what is finished by then, and does it. */
function withWork(session: Session, undone: Work[], untilMs: number): Session {
	let now = session;
	while (undone[0] !== undefined && undone[0].finishMs <= untilMs) {
		const work = undone.shift();
		if (work === undefined) break;
		const { instrument, to: tuning, capo, finishMs } = work;
		now = after(now, finishMs, { do: 'make-ready', instrument, due: { tuning, capo } });
	}
	return now;
}
