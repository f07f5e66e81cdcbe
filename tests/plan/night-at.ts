// A night as it stands after these entries, and the plan at a mark of its show clock.

import { parseMark } from '../../src/base/show-clock.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { makePlan } from '../../src/plan/make-plan.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { applyAll } from '../../src/session/apply.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import type { Show } from '../../src/showfile/show.ts';

/** Milliseconds of a mark such as `04:15`; tests' nights begin at zero. */
export function mark(text: string): number {
	const ms = parseMark(text);
	if (ms === null) throw new Error(`not a mark: ${text}`);
	return ms;
}

/** A night of this show with these entries in it. */
export function nightAfter(show: Show, entries: readonly Entry[]): Session {
	return applyAll(openSession(show), entries);
}

/** Everything on the rack made ready at this mark. */
export function allReady(show: Show, at: string): readonly Entry[] {
	return show.instruments.map(({ id }) => ({ k: 'made-ready', at: mark(at), instrument: id }));
}

export function planAt(session: Session, at: string): Plan {
	return makePlan({ session, nowMs: mark(at), plannedZeroMs: 0 });
}

/** The entries of a song begun, with the hand-overs that its plan asks for. */
function songBegun(session: Session, at: string): readonly Entry[] {
	const atMs = mark(at);
	const plan = makePlan({ session, nowMs: atMs, plannedZeroMs: 0 });
	const section = plan.sections.find(({ hasBegun }) => !hasBegun);
	if (section === undefined) throw new Error('no song is ahead');
	return [
		{ k: 'song-began', at: atMs, item: section.item },
		...plan.handOvers
			.filter((one) => one.section === section)
			.map(({ player, instrument, tuning, capo }): Entry => {
				const given = instrument === null ? {} : { capo, ...(tuning ? { tuning } : {}) };
				return { k: 'handed-over', at: atMs, by: 'plan', player, instrument, ...given };
			}),
	];
}

/** A night in which, after these entries, a song begins as planned. */
export function withSongBegun(session: Session, at: string): Session {
	return applyAll(session, songBegun(session, at));
}

export function withEntries(session: Session, ...entries: readonly Entry[]): Session {
	return applyAll(session, entries);
}
