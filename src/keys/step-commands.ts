// Stepping and ending as commands: what a key would reach, with what the plan has for that point.

import { cueIndex, cuePoints } from '../../machines/song.ts';
import { firstSong } from '../plan/demand/first-song.ts';
import type { Plan, PlannedHandOver, Section, Stay } from '../plan/plan.ts';
import type { Command, HandOver, Staying } from '../session/command.ts';
import { nextSongItem, songOnNow } from '../session/find.ts';
import { segueItem } from '../session/segue.ts';
import { songTitle } from '../showfile/shown-names.ts';
import { FOOTER, startSong } from '../words/actions.ts';
import type { KeyContext, Outcome } from './key-context.ts';
import { saysNotDone } from './not-done.ts';

type Given = Pick<PlannedHandOver, 'player' | 'instrument' | 'tuning' | 'capo' | 'pack'>;

/** A planned hand-over as a command carries it. */
export function asHandOver({ player, instrument, tuning, capo, pack }: Given): HandOver {
	return { player, instrument, tuning, capo, pack };
}

/** Who keeps what, as a command carries it. */
export function asStaying({ section, player, instrument, capo }: Stay): Staying {
	return { item: section.item, player, instrument, capo };
}

type Reached = { readonly section: Section; readonly player: string };
type IsReached = (one: Reached) => boolean;

/** The hand-overs of the point reached, who stays on what there, and who else moves a capo. */
function plannedAt({ handOvers, stays = [], capoMoves }: Plan, isReached: IsReached) {
	const staying = stays.filter(isReached);
	return {
		handOvers: handOvers.filter(isReached),
		stays: staying.map(asStaying),
		capoMoves: capoMoves
			.filter(isReached)
			.filter(({ player }) => !staying.some((one) => one.player === player)),
	};
}

/** The next step, with what it would record: the hand-overs and moved capos of the next cue point, or of the next song's start. */
export function stepCommand(context: KeyContext): Command {
	return stepTo(nextPoint(context).planned);
}

/** The same as a key does it: what is logged as done without a word of it is said. */
export function stepOutcome(context: KeyContext): Outcome {
	const { planned, isReached } = nextPoint(context);
	const command = { kind: 'command', command: stepTo(planned) } as const;
	const says = isReached ? saysNotDone(context, planned.handOvers) : undefined;
	return says === undefined ? command : { ...command, says };
}

function stepTo({ handOvers, ...kept }: ReturnType<typeof plannedAt>): Command {
	return { do: 'step', handOvers: handOvers.map(asHandOver), ...kept };
}

/** What the plan has for the next point; `isReached`: false where the step only ends the song before it. */
function nextPoint({ session, plan }: KeyContext) {
	const on = songOnNow(session);
	const point = on && session.song ? cueIndex(session.song) + 1 : 0;
	const hasNextPoint = on !== null && point < cuePoints(on.song).length;
	const item = hasNextPoint ? on.item.key : nextSongItem(session)?.key;
	return {
		planned: plannedAt(plan, isAheadAt(plan, item, hasNextPoint ? point : 0)),
		isReached: on === null || hasNextPoint || segueItem(session, on.item) !== null,
	};
}

/** The song done now, with what the plan has for the one that a segue goes straight on to. */
export function finishCommand({ session, plan }: KeyContext): Command {
	const sectionsOn = songOnNow(session) === null ? [] : firstSong(plan.sections);
	const isReached = isAheadAt(plan, nextSongItem(session)?.key, 0);
	const { handOvers: planned, ...kept } = plannedAt(plan, isReached);
	// Who was to change at a cue that is passed by goes straight to what the next song wants of them.
	const passedBy = plan.slots.filter(
		(slot) =>
			isReached(slot) &&
			slot.instrument !== null &&
			!planned.some(({ player }) => player === slot.player) &&
			plan.handOvers.some(
				({ section, player }) =>
					player === slot.player && !section.hasBegun && sectionsOn.includes(section),
			),
	);
	return {
		do: 'finish-song',
		handOvers: [...planned, ...passedBy].map(asHandOver),
		...kept,
	};
}

/** At this point, for all but those whose hand-over of the song that is on is still open: that one is what they were told. */
function isAheadAt({ handOvers }: Plan, item: string | undefined, point: number): IsReached {
	const open = handOvers.filter(({ section }) => section.hasBegun).map(({ player }) => player);
	return ({ section, player }) =>
		section.item === item && !section.hasBegun && section.point === point && !open.includes(player);
}

/** What the next step does, in a few words; null when there is none. */
export function stepWords({ session }: KeyContext): string | null {
	const on = songOnNow(session);
	if (on && session.song) {
		const point = cuePoints(on.song)[cueIndex(session.song) + 1];
		return point ? point.at : segueItem(session, on.item) ? FOOTER.segue : FOOTER.songEnds;
	}
	const next = nextSongItem(session);
	return next ? startSong(songTitle(session.show, next.song)) : null;
}
