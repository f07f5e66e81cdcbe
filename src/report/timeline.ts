// A night as a picture's data: lanes of stretches and moments, each with its sentence. Nothing here knows how wide or
// in which colours it is drawn; what is too short to be drawn becomes one stretch that counts it.

import { dayTimeText } from '../base/show-clock.ts';
import type { NightMs } from '../journal/entry.ts';
import type { MarkWhat } from '../words/timeline.ts';

/** From a moment until another. */
export type Span = { readonly fromMs: NightMs; readonly toMs: NightMs };

/** A stretch of a lane. */
export type Stretch = Span & {
	readonly what: MarkWhat;
	/** What stands in it where there is little room: the song's number, the slot, who has it; empty for nothing. */
	readonly label: string;
	/** The same where there is more. */
	readonly long: string;
	readonly sentence: string;
};

/** A moment of a lane. */
export type Moment = {
	readonly atMs: NightMs;
	readonly what: MarkWhat;
	/** Number of the incident; null for what has none. */
	readonly number: number | null;
	/** What it was, in a word or two. */
	readonly words: string;
	readonly sentence: string;
};

export type TimelineLane = {
	readonly kind: 'songs' | 'player' | 'instrument';
	readonly name: string;
	readonly stretches: readonly Stretch[];
	readonly moments: readonly Moment[];
};

/** How many instruments wait for work before they are in hands again. */
export type Load = Span & { readonly waiting: number; readonly sentence: string };

/** The part of a night that is drawn, and what is on it. */
export type Timeline = Span & {
	readonly lanes: readonly TimelineLane[];
	/** Null where the reader has no part in it. */
	readonly load: readonly Load[] | null;
	/** From the end of a song to the start of the next. */
	readonly gaps: readonly Span[];
	/** Null where there is none in this part of the night. */
	readonly curfewMs: NightMs | null;
	/** Add to UTC for the time of day. */
	readonly dayOffsetMinutes: number;
};

/** Hours and minutes of a moment. */
export type ClockOf = (atMs: NightMs) => string;

/** Hours and minutes on the wall. */
export function wallClock(atMs: NightMs, dayOffsetMinutes: number): string {
	return dayTimeText(atMs, dayOffsetMinutes).slice(0, 5);
}
