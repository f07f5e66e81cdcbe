// A line of what is to be done before the next show, and what all such lines are made from.

import type { NightFacts } from '../history/night-facts.ts';
import type { Session } from '../session/session.ts';
import type { Instrument, Show } from '../showfile/show.ts';
import type { HandOverLine } from './hand-over-lines.ts';
import type { NightStep } from './night-steps.ts';
import type { ReportTiming } from './report-timing.ts';

export type TomorrowKind = 'restring' | 'repair' | 'buy' | 'tell' | 'carry-over';

export type TomorrowLine = {
	readonly kind: TomorrowKind;
	/** The instrument's id; null where it is about none. */
	readonly instrument: string | null;
	readonly slot: string | null;
	/** The instrument's name, or that of what it is about. */
	readonly name: string | null;
	readonly text: string;
	readonly why: string;
};

export type TomorrowAsked = {
	/** Nights, oldest first; the last is the one that this is after. */
	readonly nights: readonly Pick<NightFacts, 'breaks' | 'instruments'>[];
	/** Of that night. */
	readonly report: {
		readonly handOvers: readonly HandOverLine[];
		readonly timing: ReportTiming;
	};
	readonly steps: readonly NightStep[];
	readonly dayOffsetMinutes: number;
	/** Folder of its show file. */
	readonly folder: string;
	/** The next show and its folder, where it is known. */
	readonly next: { readonly show: Show; readonly folder: string } | null;
};

/** What all lines are made from. */
export type TomorrowParts = TomorrowAsked & {
	readonly last: Session;
	readonly show: Show;
	readonly gearOf: (instrument: Instrument) => string;
	/** `21:04 in Lantern`. */
	readonly momentOf: (step: NightStep) => string;
};

/** A line about an instrument. */
export function lineOn(
	kind: TomorrowKind,
	{ id, slot, name }: Instrument,
	said: Pick<TomorrowLine, 'text' | 'why'>,
): TomorrowLine {
	return { kind, instrument: id, slot, name, ...said };
}

/** A line about anything else. */
export function lineAbout(
	kind: TomorrowKind,
	name: string,
	said: Pick<TomorrowLine, 'text' | 'why'>,
): TomorrowLine {
	return { kind, instrument: null, slot: null, name, ...said };
}

/** `1 Amber: new set 10 13 17 26w 36w 46w`; what is to be told begins with whom. */
export function lineWords({ kind, instrument, slot, name, text }: TomorrowLine): string {
	if (instrument === null || kind === 'tell') return text;
	return `${slot === null ? '' : `${slot.toUpperCase()} `}${name ?? instrument}: ${text}`;
}
