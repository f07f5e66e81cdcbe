// Which instruments get which strings before the next show, and why.

import { gearId } from '../gear/gear-id.ts';
import { dueHours } from '../history/due-strings.ts';
import { stringHours } from '../history/string-life.ts';
import type { Instrument, StringGauge } from '../showfile/show.ts';
import { gaugeText } from '../showfile/string-measure.ts';
import { isReachable } from '../tuning/retune.ts';
import { hoursText } from '../words/history.ts';
import { RESTRING } from '../words/tomorrow.ts';
import { lineOn, type TomorrowLine, type TomorrowParts } from './tomorrow-line.ts';

export type Restringing = {
	readonly line: TomorrowLine;
	/** One for each string that goes on, where gauges are known. */
	readonly gauges: readonly StringGauge[];
};

/** From this share of the hours at which they are due a new string among the old is heard (common practice, no source). */
const HEARD_SHARE = 0.5;

/** In the order of the show. */
export function linesToRestring(parts: TomorrowParts): readonly Restringing[] {
	return parts.show.instruments.flatMap((instrument) => restringing(parts, instrument) ?? []);
}

function restringing(parts: TomorrowParts, instrument: Instrument): Restringing | null {
	const { last, nights, steps, momentOf } = parts;
	const state = last.instruments[instrument.id];
	if (state === undefined) return null;
	const gear = parts.gearOf(instrument);
	const { stringsDown } = state.context;
	const age = stringHours(nights, gear);
	const due = dueHours(instrument.kind);
	const isDue = age !== null && age.hours >= due;
	const isWorn = age !== null && (age.isAtLeast || age.hours >= due * HEARD_SHARE);
	const replaced = replacedTonight(parts, gear);
	const next = nextOf(parts, gear);
	const set = next?.strings.length ? next.strings : instrument.strings;
	const hours = age === null ? '' : hoursText(age.hours, age.isAtLeast);
	const broke = steps.findLast(
		({ entry }) => entry.k === 'string-broke' && entry.instrument === instrument.id,
	);
	const forSet = [
		...(replaced.length > 0 && isWorn ? [RESTRING.among(replaced, hours)] : []),
		...(isDue ? [RESTRING.hours(hours, due)] : []),
		...strungAnew(parts, instrument),
	];
	const down =
		stringsDown.length > 0
			? [RESTRING.down(stringsDown, broke === undefined ? null : momentOf(broke))]
			: [];
	const why = [...down, ...forSet].join('; ');
	if (why === '') return null;
	const isWhole = forSet.length > 0 || (stringsDown.length > 0 && isWorn);
	return {
		line: lineOn('restring', instrument, {
			text: isWhole ? setText(set) : stringsText(stringsDown, set),
			why,
		}),
		gauges: isWhole
			? set
			: stringsDown.flatMap((string) => (string === null ? [] : (set[string - 1] ?? []))),
	};
}

/** Broken strings that were put on again that night, with no whole set after. */
function replacedTonight({ nights }: TomorrowParts, gear: string): readonly (number | null)[] {
	const restrings = nights.at(-1)?.instruments.find((one) => one.gear === gear)?.restrings ?? [];
	const whole = restrings.findLastIndex(({ strings }) => strings.length === 0);
	return restrings.slice(whole + 1).flatMap(({ strings }) => strings);
}

function nextOf({ next }: TomorrowParts, gear: string): Instrument | undefined {
	return next?.show.instruments.find((one) => gearId(one, next.folder) === gear);
}

/** What the next show asks of it that it is not strung for. */
function strungAnew(parts: TomorrowParts, instrument: Instrument): readonly string[] {
	const coming = nextOf(parts, parts.gearOf(instrument));
	const { next } = parts;
	if (coming === undefined || next === null) return [];
	const asked = next.show.songs.flatMap(({ title, parts: hands }) =>
		Object.values(hands).flatMap((part) =>
			part.kind === 'named' && part.instrument === coming.id
				? [{ title, tuning: part.tuning ?? coming.tuning }]
				: [],
		),
	);
	const { kind, tuning: own } = instrument;
	const far = Map.groupBy(
		asked.filter(({ tuning }) => !isReachable(own.notes, tuning.notes, kind)),
		({ tuning }) => tuning.name,
	);
	const isOtherSet =
		coming.strings.length > 0 &&
		instrument.strings.length > 0 &&
		coming.strings.map(gaugeText).join() !== instrument.strings.map(gaugeText).join();
	return [
		...[...far].map(([tuning, songs]) =>
			RESTRING.tuning(songs.map(({ title }) => title).join(', '), tuning),
		),
		...(isOtherSet ? [RESTRING.gauges] : []),
	];
}

function setText(set: readonly StringGauge[]): string {
	return set.length === 0 ? RESTRING.setUnknown : RESTRING.set(set.map(gaugeText).join(' '));
}

function stringsText(strings: readonly (number | null)[], set: readonly StringGauge[]): string {
	return RESTRING.strings(
		strings
			.map((string) => {
				const gauge = string === null ? undefined : set[string - 1];
				return string === null
					? RESTRING.unnamed
					: RESTRING.string(string, gauge === undefined ? null : gaugeText(gauge));
			})
			.join(', '),
	);
}
