// How long what is on has gone on, and how long it has left.

import { fitWidth } from '../base/display-width.ts';
import { minutesSeconds } from '../base/duration.ts';
import { songEndMs } from '../plan/demand/first-song.ts';
import { plannedGap } from '../session/planned-gap.ts';
import { elapsedWords, leftWords } from '../words/stage.ts';
import { songFrom, songOf } from './named-in-show.ts';
import type { ScreenState } from './screen-state.ts';

type Times = {
	readonly elapsed: number;
	readonly length: number | null;
	readonly left: number | null;
};

function songTimes(state: ScreenState): Times | null {
	const { session, plan, nowMs } = state;
	const item = session.song === null ? null : songFrom(session, session.current);
	const run = item?.runs[item.runs.length - 1];
	if (item === null || run === undefined) return null;
	const elapsed = (nowMs - run.beganAtMs) / 1000;
	const length = songOf(session.show, item.song)?.lengthSeconds ?? null;
	const endMs = songEndMs(plan.sections);
	// Past its written length the song is expected to end any moment, and what is said is by how much it is over.
	const expected = endMs === null ? null : (endMs - nowMs) / 1000;
	return { elapsed, length, left: length === null ? expected : length - elapsed };
}

/** Seconds of the interval that is on; null where none is. */
export function intervalSeconds({ session }: ScreenState): number | null {
	if (session.phase.value !== 'interval') return null;
	const at = session.list.findIndex((one) => one.key === session.next);
	const interval = [session.list[at], session.list[at - 1]].find((one) => one?.kind === 'interval');
	return interval?.kind === 'interval' ? interval.seconds : null;
}

/** Seconds until the show starts; null once it has, and past its hour, when nobody knows how long it has yet to go. */
export function startSeconds({ session, nowMs, zeroMs }: ScreenState): number | null {
	return session.phase.value !== 'before' || zeroMs < nowMs ? null : (zeroMs - nowMs) / 1000;
}

/** Seconds until the song or the interval that is on is over. */
function secondsLeft(state: ScreenState): number | null {
	const { session, nowMs } = state;
	if (session.song !== null) return songTimes(state)?.left ?? null;
	const seconds = intervalSeconds(state);
	if (seconds === null || session.phaseSinceMs === null) return null;
	return seconds - (nowMs - session.phaseSinceMs) / 1000;
}

/** `  2:33`, in the cells that it takes however long it grows; empty where nobody knows. */
export function leftNumber(state: ScreenState): string {
	const left = secondsLeft(state);
	return left === null ? '' : fitWidth(minutesSeconds(left), 6, { align: 'right' });
}

/** `  2:33 left`, `  0:43 over`; empty where nobody knows. */
export function leftText(state: ScreenState): string {
	const left = secondsLeft(state);
	return left === null ? '' : leftWords(left);
}

/** `1:12 of 3:45`. */
export function elapsedText(state: ScreenState): string {
	const times = songTimes(state);
	return times === null ? '' : elapsedWords(times.elapsed, times.length);
}

/** Between two songs, how long the gap is to be; the plan's own grows with the time that has gone by. */
export function gapSeconds({ session }: ScreenState): number | null {
	const [next, before] = [session.next, session.current].map((key) => songFrom(session, key));
	if (session.phase.value !== 'changeover' || !next || !before) return null;
	return plannedGap(session, next, before);
}
