// The form of a report's data, for those who read it with another program: a published JSON Schema. The types of the
// report are the model; this is checked to have every field of them, and by tests to fit what reports are.

import * as z from 'zod/mini';
import {
	list,
	number,
	numberOrNull,
	text,
	textOrNull,
	boolean as yes,
} from '../showfile/form-pieces.ts';
import { described, type Schema, type TellKey } from '../showfile/json-schema.ts';
import type { Lanes } from './lanes.ts';
import type { NightReport } from './night-report.ts';
import { REPORT_FORMAT } from './report-json.ts';

/** Has every field. */
export type Whole<Of> = { readonly [Field in keyof Of]-?: z.ZodMiniType };
export type Line<Lines> = Lines extends readonly (infer One)[] ? One : never;

const yesOrNull = z.nullable(yes);

const TIME = z.strictObject({ mark: textOrNull, clock: text, atMs: number });
const TIME_OR_NULL = z.nullable(TIME);
const LINE = z.strictObject({ at: TIME, words: text });
const AT = { at: TIME, atMs: number };
const SPAN = { fromMs: number, toMs: number };
const PLAYER = { player: text, playerId: text };
const PLAYER_OR_NULL = { player: textOrNull, playerId: textOrNull };
const INSTRUMENT_OR_NULL = { instrument: textOrNull, instrumentId: textOrNull };
const LISTED = { item: text, song: text, title: text };
const SONG_END = z.enum(['played', 'cut-short', 'skipped']);

const PLANNED = z.strictObject({
	position: number,
	startSeconds: number,
	began: TIME_OR_NULL,
	seconds: number,
	isLengthGiven: yes,
	gapSeconds: numberOrNull,
} satisfies Whole<Line<NightReport['songsGone']>['planned']>);

const SONG = z.strictObject({
	...LISTED,
	position: numberOrNull,
	state: z.enum(['played', 'cut-short', 'skipped', 'dropped', 'on', 'to-come']),
	whyNotPlayed: z.nullable(z.enum(['dropped', 'skipped', 'to-come'])),
	isEncore: yes,
	planned: z.nullable(PLANNED),
	isAdded: yes,
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

const HAND_OVER = z.strictObject({
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
	correctedFrom: textOrNull,
	noted: z.enum(['by-itself', 'with-song', 'later']),
	wantedSeconds: numberOrNull,
	takenSeconds: numberOrNull,
	isLate: yesOrNull,
	tech: textOrNull,
} satisfies Whole<Line<NightReport['handOvers']>>);

const WRONG_HOLD = z.strictObject({
	...AT,
	...PLAYER,
	held: text,
	song: text,
	wanted: text,
	seconds: numberOrNull,
} satisfies Whole<Line<NightReport['wrongHolds']>>);

const OTHER = z.strictObject({
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

const INCIDENT = z.strictObject({
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
		outSeconds: numberOrNull,
		songsOnOther: list(z.strictObject({ item: text, song: text, played: text })),
		isSongCutShort: yes,
	} satisfies Whole<Line<NightReport['incidents']>['later']>),
	words: list(text),
	record: text,
	remark: textOrNull,
} satisfies Whole<Line<NightReport['incidents']>>);

const PLACE = z.enum(['rack', 'stage', 'hands', 'bench', 'out']);

const LANES = z.strictObject({
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

const TIMING = z.strictObject({
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

const WORK = z.strictObject({
	at: TIME,
	instrument: text,
	instrumentId: text,
	job: z.enum(['touch-up', 'retune', 'capo', 'restring']),
	tuning: text,
	capo: number,
	isEarly: yes,
	plannedSeconds: number,
	plannedLastSeconds: number,
	usedAt: TIME_OR_NULL,
	usedFor: textOrNull,
	leftSeconds: numberOrNull,
	isLate: yesOrNull,
	item: textOrNull,
	position: numberOrNull,
} satisfies Whole<Line<NightReport['work']>>);

const INSTRUMENT = z.strictObject({
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

const REPORT = z.strictObject({
	format: z.literal(REPORT_FORMAT),
	title: text,
	venue: textOrNull,
	date: textOrNull,
	night: text,
	isRehearsal: yes,
	isOver: yes,
	dayOffsetMinutes: number,
	began: TIME_OR_NULL,
	ended: TIME_OR_NULL,
	hasTrouble: yes,
	isClean: yes,
	songs: list(SONG),
	songsGone: list(z.strictObject({ ...LISTED, planned: PLANNED })),
	players: list(z.strictObject({ id: text, name: text, plays: textOrNull, tech: textOrNull })),
	instruments: list(INSTRUMENT),
	lanes: LANES,
	timing: TIMING,
	work: list(WORK),
	missedCues: list(
		z.strictObject({
			at: TIME,
			item: text,
			position: numberOrNull,
			song: text,
			cues: list(text),
			playerIds: list(text),
		} satisfies Whole<Line<NightReport['missedCues']>>),
	),
	packs: list(
		z.strictObject({
			at: TIME,
			what: z.enum(['changed', 'suspected', 'cleared', 'fresh-battery', 'left-off']),
			player: textOrNull,
			playerId: textOrNull,
			pack: text,
			packId: text,
			from: textOrNull,
			wearer: textOrNull,
		} satisfies Whole<Line<NightReport['packs']>>),
	),
	takenBack: number,
	remark: textOrNull,
	signed: textOrNull,
	beforeShow: list(LINE),
	handOvers: list(HAND_OVER),
	wrongHolds: list(WRONG_HOLD),
	otherThanAsked: list(OTHER),
	incidents: list(INCIDENT),
	memos: list(LINE),
	boardsCorrected: list(LINE),
	gaps: list(LINE),
	damage: list(text),
	tomorrow: list(text),
	repairs: list(
		z.strictObject({
			instrumentId: textOrNull,
			playerId: textOrNull,
			words: text,
		} satisfies Whole<Line<NightReport['repairs']>>),
	),
	stringsBroken: list(
		z.strictObject({ instrument: text, instrumentId: text, count: number, strings: list(number) }),
	),
	cautions: list(text),
	forNext: list(
		z.strictObject({
			kind: z.enum(['restring', 'repair', 'buy', 'tell', 'carry-over']),
			instrument: textOrNull,
			slot: textOrNull,
			name: textOrNull,
			text,
			why: text,
		} satisfies Whole<Line<NightReport['forNext']>>),
	),
} satisfies Whole<NightReport & { format: number }>);

/** JSON Schema (draft 2020-12) of `report --json`, told by key. */
export function reportJsonSchema(tell: TellKey): Schema {
	const schema = z.toJSONSchema(REPORT, { target: 'draft-2020-12', io: 'output' });
	return described(schema, [], tell);
}
