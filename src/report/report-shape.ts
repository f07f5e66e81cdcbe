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
import type { NightReport } from './night-report.ts';
import { REPORT_FORMAT } from './report-json.ts';
import { HAND_OVER, INCIDENT, OTHER, PLANNED, SONG, WRONG_HOLD } from './report-shape-events.ts';
import { INSTRUMENT, LANES, TIMING, WORK } from './report-shape-states.ts';
import { LINE, LISTED, type Line, TIME, TIME_OR_NULL, type Whole } from './shape-pieces.ts';

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
