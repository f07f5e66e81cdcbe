// What a player stays on for a song that names another instrument, or another capo: the act, as the plan has it.

import type { Plan, PlannedHandOver, Section, Stay } from '../plan/plan.ts';
import { capoAct } from '../words/capo-words.ts';
import { keepsLabel, whenWords } from '../words/stage.ts';
import { forWords, momentOf } from './coming-words.ts';
import { slotLabel } from './named-in-show.ts';
import type { ScreenState } from './screen-state.ts';
import type { Dated } from './what-comes.ts';

/**
 * What the player stays on for the next song, else the capo that they move on it for a later one; nothing where a
 * hand-over comes before. First of all one still to be moved for the song that is on, reached by a skip.
 */
export function stayBefore(
	{ stays, capoMoves }: Plan,
	player: string,
	planned: PlannedHandOver | undefined,
): Stay | undefined {
	const isOwn = (one: Stay) => one.player === player;
	const open = capoMoves.find((one) => isOwn(one) && one.section.hasBegun);
	if (open !== undefined) return open;
	const stay = [...stays, ...capoMoves].find((one) => isOwn(one) && !one.section.hasBegun);
	// Without a hand-over to come a later capo is no more than a word beside what they keep.
	if (stay === undefined || (planned === undefined && !stays.includes(stay))) return undefined;
	return planned === undefined || isNotAfter(stay.section, planned.section) ? stay : undefined;
}

/** Whether a section begins no later than another. */
export function isNotAfter(one: Section, other: Section): boolean {
	return one.startMs <= other.startMs;
}

/** When the others get something for the same song, so that all of one gap have one moment; null where nobody does. */
export function wantedBeside({ handOvers }: Plan, section: Section): number | null {
	return handOvers.find((one) => one.section === section)?.wantedMs ?? null;
}

/** The same as what is coming for the player, with the moment at which it is wanted. */
export function stayingOf(state: ScreenState, stay: Stay): Dated {
	const { section, player, instrument, tuning, capo } = stay;
	const aheadMs = wantedBeside(state.plan, section) ?? section.previousEndMs;
	// Still to be done in a song that is on, it has been wanted since that began.
	const atMs = section.hasBegun ? section.startMs : (aheadMs ?? section.startMs);
	const untilSeconds = (atMs - state.nowMs) / 1000;
	const acts = stayActs(state, stay);
	return {
		// Where nothing is to be done, what is to be done before the same song comes first.
		atMs: acts.length > 1 ? atMs : section.startMs,
		coming: {
			player,
			kind: 'stays',
			instrument,
			tuning,
			capo,
			for: stay.for,
			...forWords(state, section),
			moment: momentOf(section),
			seconds: untilSeconds,
			when: whenWords(untilSeconds, section.hasBegun),
			mark: null,
			why: null,
			status: acts.join(', '),
			due: [],
			leave: null,
			pack: null,
			isUrgent: acts.length > 1 && untilSeconds <= 0,
		},
	};
}

/** `KEEPS S`, and the capo where it is still to be moved. */
function stayActs({ session }: ScreenState, { instrument, capo }: Stay): readonly string[] {
	const keeps = keepsLabel(slotLabel(session.show, instrument));
	return session.instruments[instrument]?.context.capo === capo ? [keeps] : [keeps, capoAct(capo)];
}
