// How long the work for one use of an instrument takes, and how much of it is the touch-up at its end.

import type { Instrument } from '../../../src/showfile/show.ts';
import { courseMoves, type Pitches } from './sounding.ts';

/** How an instrument hangs there, and what it is to be in next. */
export type WorkAsked = {
	readonly instrument: Instrument;
	readonly isIn: Pitches;
	readonly capoOn: number;
	readonly isToWipe: boolean;
	readonly stringsDown: number;
	readonly open: Pitches;
	readonly capo: number;
};

/** Seconds in all, and those of the last piece: the touch-up with the capo where one moves. */
export type WorkSeconds = {
	readonly all: number;
	readonly last: number;
	/** The first piece can be done at any time: pitches change or strings are down. */
	readonly canBeSplit: boolean;
};

/** The seconds of one use that is not ready as it is. */
export function secondsOfWork(asked: WorkAsked): WorkSeconds {
	const { times } = asked.instrument;
	const capo = asked.capo === asked.capoOn ? 0 : times.capo;
	const tuned = tuningSeconds(asked.instrument, asked.isIn, asked.open);
	const last = times.touchUp + capo;
	if (asked.stringsDown > 0) {
		const strings = times.restring + times.furtherString * (asked.stringsDown - 1);
		return { all: strings + (tuned - times.touchUp) + capo, last, canBeSplit: true };
	}
	const wipe = asked.isToWipe ? times.wipe : 0;
	const changes = asked.open.some((note, i) => note !== asked.isIn[i]);
	return { all: wipe + tuned + capo, last, canBeSplit: changes };
}

/** From one open tuning to another, the touch-up in it; a course is one string. */
function tuningSeconds({ kind, times }: Instrument, from: Pitches, to: Pitches): number {
	const courses = courseMoves(kind, from, to);
	const moved = courses.filter((course) => course.some((move) => move !== 0));
	if (moved.length === 0) return times.touchUp;
	if (moved.length === 1) return times.oneString;
	if (moved.length === 2) return times.twoStrings;
	const interval = courses[0]![0];
	const isEven = courses.every((course) => course.every((move) => move === interval));
	return isEven ? times.allStrings : times.otherTuning;
}
