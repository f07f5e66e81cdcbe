// The published form of how things stood in a night: lanes, timing, work, instruments.

import * as z from 'zod/mini';
import {
	list,
	number,
	numberOrNull,
	text,
	textOrNull,
	boolean as yes,
} from '../showfile/form-pieces.ts';
import type { Lanes } from './lanes.ts';
import type { NightReport } from './night-report.ts';
import {
	type Line,
	PLACE,
	SPAN,
	TIME,
	TIME_OR_NULL,
	type Whole,
	yesOrNull,
} from './shape-pieces.ts';

export const LANES = z.strictObject({
	...SPAN,
	instruments: z.record(
		text,
		list(
			z.strictObject({
				...SPAN,
				place: PLACE,
				player: textOrNull,
				tuning: text,
				capo: number,
				readiness: z.nullable(z.enum(['ready', 'stale', 'not-ready'])),
				stringsDown: number,
				hasFault: yes,
			} satisfies Whole<Line<Lanes['instruments'][string]>>),
		),
	),
	players: z.record(
		text,
		list(
			z.strictObject({
				...SPAN,
				instrument: textOrNull,
				tuning: textOrNull,
				capo: numberOrNull,
			} satisfies Whole<Line<Lanes['players'][string]>>),
		),
	),
} satisfies Whole<Lanes>);

export const TIMING = z.strictObject({
	plannedStart: TIME_OR_NULL,
	plannedEnd: TIME_OR_NULL,
	plannedSeconds: number,
	seconds: numberOrNull,
	startLateSeconds: numberOrNull,
	endLateSeconds: numberOrNull,
	overrunSeconds: numberOrNull,
	curfew: z.nullable(
		z.strictObject({
			clock: text,
			at: TIME_OR_NULL,
			overSeconds: numberOrNull,
			isMet: yesOrNull,
		} satisfies Whole<NonNullable<NightReport['timing']['curfew']>>),
	),
	lost: list(
		z.strictObject({
			where: z.enum(['start', 'gap', 'interval', 'song']),
			at: TIME,
			item: text,
			song: text,
			seconds: number,
			incidents: list(number),
			lateHandOvers: list(number),
		} satisfies Whole<Line<NightReport['timing']['lost']>>),
	),
} satisfies Whole<NightReport['timing']>);

export const WORK = z.strictObject({
	at: TIME,
	doneIn: z.nullable(z.strictObject({ position: numberOrNull, song: text })),
	doneBefore: textOrNull,
	instrument: text,
	instrumentId: text,
	job: z.enum(['touch-up', 'retune', 'capo', 'restring']),
	tuning: text,
	capo: number,
	isEarly: yes,
	plannedSeconds: number,
	takenSeconds: numberOrNull,
	plannedLastSeconds: number,
	usedAt: TIME_OR_NULL,
	usedFor: textOrNull,
	leftSeconds: numberOrNull,
	isLate: yesOrNull,
	item: textOrNull,
	wantedFor: textOrNull,
	position: numberOrNull,
} satisfies Whole<Line<NightReport['work']>>);

export const INSTRUMENT = z.strictObject({
	id: text,
	instrument: text,
	slot: textOrNull,
	kind: text,
	serial: textOrNull,
	owner: textOrNull,
	hiredFrom: textOrNull,
	secondsInHands: number,
	stringHours: numberOrNull,
	place: PLACE,
	tuning: text,
	capo: number,
	stringsDown: list(numberOrNull),
	faults: list(text),
	incidents: list(number),
	restrings: number,
} satisfies Whole<Line<NightReport['instruments']>>);
