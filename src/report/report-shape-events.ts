// The published form of what happened in a night: songs, hand-overs, holds, incidents.

import * as z from 'zod/mini';
import {
	list,
	number,
	numberOrNull,
	text,
	textOrNull,
	boolean as yes,
} from '../showfile/form-pieces.ts';
import type { NightReport } from './night-report.ts';
import {
	AT,
	INSTRUMENT_OR_NULL,
	LINE,
	LISTED,
	type Line,
	PLAYER,
	PLAYER_OR_NULL,
	TIME,
	TIME_OR_NULL,
	type Whole,
	yesOrNull,
} from './shape-pieces.ts';

const SONG_END = z.enum(['played', 'cut-short', 'skipped']);

export const PLANNED = z.strictObject({
	position: number,
	startSeconds: number,
	began: TIME_OR_NULL,
	seconds: number,
	isLengthGiven: yes,
	gapSeconds: numberOrNull,
} satisfies Whole<Line<NightReport['songsGone']>['planned']>);

export const SONG = z.strictObject({
	...LISTED,
	position: numberOrNull,
	state: z.enum(['played', 'cut-short', 'skipped', 'dropped', 'on', 'to-come']),
	whyNotPlayed: z.nullable(z.enum(['dropped', 'skipped', 'to-come'])),
	isEncore: yes,
	planned: z.nullable(PLANNED),
	isAdded: yes,
	lengthSeconds: numberOrNull,
	isMoved: yes,
	runs: list(
		z.strictObject({
			began: TIME,
			ended: TIME_OR_NULL,
			seconds: numberOrNull,
			how: z.nullable(SONG_END),
			gapSeconds: numberOrNull,
		} satisfies Whole<Line<Line<NightReport['songs']>['runs']>>),
	),
	happened: list(LINE),
} satisfies Whole<Line<NightReport['songs']>>);

export const HAND_OVER = z.strictObject({
	...AT,
	song: textOrNull,
	item: textOrNull,
	...PLAYER,
	...INSTRUMENT_OR_NULL,
	tuning: textOrNull,
	capo: numberOrNull,
	by: z.enum(['plan', 'stand-in', 'exchange']),
	readyAgeSeconds: numberOrNull,
	isStale: yes,
	readyIn: textOrNull,
	correctedFrom: textOrNull,
	noted: z.enum(['by-itself', 'with-song', 'later']),
	wantedSeconds: numberOrNull,
	takenSeconds: numberOrNull,
	isLate: yesOrNull,
	tech: textOrNull,
} satisfies Whole<Line<NightReport['handOvers']>>);

export const WRONG_HOLD = z.strictObject({
	...AT,
	...PLAYER,
	held: text,
	song: text,
	wanted: text,
	seconds: numberOrNull,
} satisfies Whole<Line<NightReport['wrongHolds']>>);

export const OTHER = z.strictObject({
	...AT,
	position: numberOrNull,
	song: text,
	...PLAYER,
	played: text,
	playedId: text,
	asked: text,
	askedId: textOrNull,
	backupFor: textOrNull,
	seconds: numberOrNull,
} satisfies Whole<Line<NightReport['otherThanAsked']>>);

export const INCIDENT = z.strictObject({
	id: number,
	at: TIME,
	position: numberOrNull,
	song: textOrNull,
	before: textOrNull,
	kind: text,
	...PLAYER_OR_NULL,
	...INSTRUMENT_OR_NULL,
	string: numberOrNull,
	pedal: textOrNull,
	stringHours: numberOrNull,
	standIn: textOrNull,
	standInId: textOrNull,
	silenceSeconds: numberOrNull,
	soundAt: TIME_OR_NULL,
	isPlayedOn: yes,
	isOpen: yes,
	later: z.strictObject({
		backAt: TIME_OR_NULL,
		backIn: z.nullable(z.strictObject({ position: numberOrNull, song: text })),
		backBefore: textOrNull,
		outSeconds: numberOrNull,
		songsOnOther: list(z.strictObject({ item: text, song: text, played: text })),
		isSongCutShort: yes,
	} satisfies Whole<Line<NightReport['incidents']>['later']>),
	words: list(text),
	record: text,
	remark: textOrNull,
} satisfies Whole<Line<NightReport['incidents']>>);
