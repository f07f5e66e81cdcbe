// Several nights beside one another, oldest first: what broke, how long it was silent, what was late, which gaps were
// tight in the plan and which in truth.

import { tenths } from '../base/show-clock.ts';
import { type BrokenString, brokenStrings } from '../history/broken-strings.ts';
import { type NeededTime, neededTimes } from '../history/needed-times.ts';
import type { NightFacts } from '../history/night-facts.ts';
import { quantile } from '../history/quantile.ts';
import { stringHours } from '../history/string-life.ts';
import { type GapOfNight, tightGaps } from '../history/tight-gaps.ts';

export type NightLine = {
	readonly night: string;
	readonly title: string;
	readonly day: string;
	/** Each time that one was on and not skipped. */
	readonly songs: number;
	readonly breaks: number;
	/** Until there was sound again after a break; null where that is not known of any. */
	readonly soundSeconds: { readonly median: number; readonly longest: number } | null;
	readonly handOversLate: number;
	/** Those of which it is known whether they were late. */
	readonly handOvers: number;
	readonly tightInPlan: number;
	readonly tightInTruth: number;
};

export type NightsReport = {
	readonly nights: readonly NightLine[];
	readonly strings: readonly BrokenString[];
	readonly gaps: readonly (GapOfNight & { readonly day: string })[];
	/** After the last of the nights, instruments that were in hands in one of them. */
	readonly hours: readonly {
		readonly gear: string;
		readonly shown: string;
		readonly hours: number;
		readonly isAtLeast: boolean;
	}[];
	readonly times: readonly NeededTime[];
};

/** What the data of several nights says of its own form. */
export const NIGHTS_FORMAT = 'rackside-nights/1';

/** The nights as one JSON document with a newline at its end. */
export function nightsJson(report: NightsReport): string {
	return `${JSON.stringify({ format: NIGHTS_FORMAT, ...report }, null, 2)}\n`;
}

/** The nights as data, told from facts oldest first. */
export function nightsReport(nights: readonly NightFacts[]): NightsReport {
	const days = new Map(nights.map(({ night, day }) => [night, day]));
	const gaps = tightGaps(nights).map((gap) => ({ ...gap, day: days.get(gap.night) ?? '' }));
	const shown = new Map(
		nights.flatMap(({ instruments }) =>
			instruments
				.filter(({ hours }) => hours > 0)
				.map((one): [string, string] => [one.gear, one.shown]),
		),
	);
	return {
		nights: nights.map((one) => lineOf(one, gaps)),
		strings: brokenStrings(nights),
		gaps,
		hours: [...shown].flatMap(([gear, name]) => {
			const found = stringHours(nights, gear);
			return found === null ? [] : [{ gear, shown: name, ...found, hours: tenths(found.hours) }];
		}),
		times: neededTimes(nights),
	};
}

function lineOf(facts: NightFacts, gaps: readonly GapOfNight[]): NightLine {
	const silent = facts.breaks.flatMap(({ silentSeconds }) => silentSeconds ?? []);
	const own = gaps.filter(({ night }) => night === facts.night);
	return {
		...{ night: facts.night, title: facts.title, day: facts.day },
		songs: facts.songs.length,
		breaks: facts.breaks.length,
		soundSeconds:
			silent.length === 0
				? null
				: { median: tenths(quantile(silent, 0.5)), longest: tenths(Math.max(...silent)) },
		handOversLate: facts.lateHandOvers,
		handOvers: facts.lateHandOvers + facts.timelyHandOvers,
		tightInPlan: own.filter(({ isTightInPlan }) => isTightInPlan).length,
		tightInTruth: own.filter(({ wasTight }) => wasTight === true).length,
	};
}
