// The form of the data of several nights beside one another, as a published JSON Schema; see `report-shape.ts`.

import * as z from 'zod/mini';
import { list, number, numberOrNull, text, boolean as yes } from '../showfile/form-pieces.ts';
import { described, type Schema, type TellKey } from '../showfile/json-schema.ts';
import { NIGHTS_FORMAT, type NightsReport } from './nights-report.ts';
import type { Line, Whole } from './shape-pieces.ts';

const NIGHTS = z.strictObject({
	format: z.literal(NIGHTS_FORMAT),
	nights: list(
		z.strictObject({
			night: text,
			title: text,
			day: text,
			songs: number,
			breaks: number,
			soundSeconds: z.nullable(z.strictObject({ median: number, longest: number })),
			handOversLate: number,
			handOvers: number,
			tightInPlan: number,
			tightInTruth: number,
		} satisfies Whole<Line<NightsReport['nights']>>),
	),
	strings: list(
		z.strictObject({
			gear: text,
			shown: text,
			string: numberOrNull,
			breaks: number,
			nightsBroken: number,
			nightsUsed: number,
			chance: z.strictObject({ low: number, high: number }),
		} satisfies Whole<Line<NightsReport['strings']>>),
	),
	gaps: list(
		z.strictObject({
			night: text,
			day: text,
			song: text,
			title: text,
			plannedSeconds: number,
			seconds: number,
			handOvers: number,
			neededSeconds: number,
			leftSeconds: numberOrNull,
			isLate: yes,
			isTightInPlan: yes,
			wasTight: z.nullable(yes),
		} satisfies Whole<Line<NightsReport['gaps']>>),
	),
	hours: list(
		z.strictObject({ gear: text, shown: text, hours: number, isAtLeast: yes } satisfies Whole<
			Line<NightsReport['hours']>
		>),
	),
	times: list(
		z.strictObject({
			work: text,
			count: number,
			leftOut: number,
			usedSeconds: number,
			medianSeconds: numberOrNull,
			highSeconds: numberOrNull,
		} satisfies Whole<Line<NightsReport['times']>>),
	),
} satisfies Whole<NightsReport & { format: string }>);

/** JSON Schema (draft 2020-12) of `report --nights N --json`, told by key. */
export function nightsJsonSchema(tell: TellKey): Schema {
	const schema = z.toJSONSchema(NIGHTS, { target: 'draft-2020-12', io: 'output' });
	return described(schema, [], tell);
}
