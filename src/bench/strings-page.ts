// A set of strings on an instrument in a tuning as data and in lines: what each bears and how near it is to
// its limits, which gauges at hand keep the feel.

import { textTable } from '../base/text-table.ts';
import { makesAtHand, onlyPlayer, stringsOf } from '../showfile/instrument-strings.ts';
import type { Instrument, Show } from '../showfile/show.ts';
import { gaugeText } from '../showfile/string-measure.ts';
import type { GaugeChoice } from '../tuning/stock-gauge.ts';
import { gaugeFor, SAME_FEEL } from '../tuning/stock-gauge.ts';
import type { StringMake } from '../tuning/string-material.ts';
import type { BearingString, StringLimits } from '../tuning/string-set.ts';
import { balance, LEAST_STRENGTH_LEFT, limitsOf, totalNewtons } from '../tuning/string-set.ts';
import { kilogramsForce, partialSharpness, poundsForce } from '../tuning/string-tension.ts';
import type { Tuning } from '../tuning/tuning.ts';
import { breaksOrNear, STRINGS } from '../words/bench-pages.ts';
import { signed, to4 } from './figures.ts';

export type SetAsked = {
	readonly show: Show;
	readonly instrument: Instrument;
	readonly tuning: Tuning;
	readonly scale: number | null;
};

export type SetInTuning = {
	readonly id: string;
	readonly tuning: Tuning;
	readonly strings: readonly BearingString[];
	/** As it is now, on its own scale in its own tuning. */
	readonly now: readonly BearingString[];
	/** A gauge at hand for each string that keeps its present tension; null where none is at hand. */
	readonly keepsFeel: readonly (GaugeChoice | null)[];
	/** The show says what gauges there are, so that none is a finding. */
	readonly isStockKnown: boolean;
};

/** The set there, beside what it is now; without strings where gauges or scale are not known. */
export function setInTuning({ show, instrument, tuning, scale }: SetAsked): SetInTuning {
	const player = onlyPlayer(instrument);
	const there = { ...instrument, scaleMillimetres: scale };
	const strings = stringsOf(show, { instrument: there, tuning, player });
	const own = stringsOf(show, { instrument, tuning: instrument.tuning, player });
	// Without a scale of its own there is no feel but that of the scale asked about.
	const now =
		own.length > 0
			? own
			: stringsOf(show, { instrument: there, tuning: instrument.tuning, player });
	const atHand = makesAtHand(show, instrument);
	const keepsFeel = strings.map((one, index) =>
		gaugeFor(
			{
				kind: instrument.kind,
				scaleMillimetres: scale ?? 0,
				hertz: one.hertz,
				newtons: now[index]?.newtons ?? one.newtons,
				isWound: one.make.isWound,
			},
			atHand,
		),
	);
	const isStockKnown = show.stock.length > 0 || show.gauges !== undefined;
	return { id: instrument.id, tuning, strings, now, keepsFeel, isStockKnown };
}

/** Whether a string has too little of its strength left. */
export function isNearBreaking({ strengthLeft }: BearingString): boolean {
	return strengthLeft !== null && strengthLeft < LEAST_STRENGTH_LEFT;
}

/** The fields that others rely on, and more. */
export function setJson({ id, tuning, strings, now, keepsFeel }: SetInTuning) {
	const total = totalNewtons(strings);
	const shares = balance(strings);
	return {
		instrument: id,
		tuning: tuning.name,
		strings: strings.map((one, index) => ({
			string: one.string,
			gaugeIn: inches(one.make),
			gaugeMm: to4(one.make.millimetres),
			wound: one.make.isWound,
			massGPerM: Number(one.gramsPerMetre.toFixed(5)),
			tensionN: to4(one.newtons),
			tensionLbf: to4(poundsForce(one.newtons)),
			tensionKgf: to4(kilogramsForce(one.newtons)),
			stressMPa: to4(one.stress),
			strengthLeft: orNull(one.strengthLeft),
			...limitsJson(limitsOf(one)),
			balance: to4(shares[index] ?? 1),
			from: one.from,
			uncertainty: one.uncertainty,
			keepsFeel: feelJson(keepsFeel[index] ?? null),
		})),
		totalN: to4(total.newtons),
		totalLbf: to4(poundsForce(total.newtons)),
		totalKgf: to4(kilogramsForce(total.newtons)),
		totalUncertainty: to4(total.uncertainty),
		changeN: to4(total.newtons - totalNewtons(now).newtons),
		uncertain: strings.filter(({ uncertainty }) => uncertainty > 0).map(({ string }) => string),
		nearBreaking: strings.filter(isNearBreaking).map(({ string }) => string),
	};
}

function limitsJson(limits: StringLimits | null) {
	return {
		headroomSemitones: limits && to4(limits.headroomSemitones),
		headroomLeastSemitones: limits && to4(limits.headroomLeast),
		centsPerKelvin: limits && to4(limits.centsPerKelvin),
		inharmonicity: limits && Number(limits.inharmonicity.toPrecision(6)),
	};
}

function feelJson(choice: GaugeChoice | null) {
	if (choice === null) return null;
	const { make, newtons, off } = choice;
	return {
		gaugeIn: inches(make),
		wound: make.isWound,
		tensionN: to4(newtons),
		off: to4(off),
		isSame: Math.abs(off) <= SAME_FEEL,
	};
}

function orNull(value: number | null): number | null {
	return value === null ? null : to4(value);
}

function inches({ millimetres }: StringMake): number {
	return Number((millimetres / 25.4).toFixed(5));
}

/** `10`, `46w`. */
export function gaugeWords(make: StringMake): string {
	return `${Number((inches(make) * 1000).toFixed(1))}${make.isWound ? 'w' : ''}`;
}

/** Where stiffness is heard: from this many cents in the twelfth partial on (common practice, no source). */
const STIFF_CENTS = 10;
/** A gauge this far from the wanted tension is no substitute (common practice, no source). */
const FURTHEST_OFF = 0.1;

/** The set as it is printed. */
export function setLines(set: SetInTuning, name: string): readonly string[] {
	const { strings, now, keepsFeel, tuning, isStockKnown } = set;
	const total = totalNewtons(strings);
	const shares = balance(strings);
	const limits = strings.map(limitsOf);
	const rows = strings.map((one, index) => [
		String(one.string),
		gaugeText(one.make),
		STRINGS.newtons(one.newtons, one.uncertainty),
		`${poundsForce(one.newtons).toFixed(1)} lbf`,
		`${kilogramsForce(one.newtons).toFixed(2)} kgf`,
		`${signed(((shares[index] ?? 1) - 1) * 100, 0)} %`,
		...limitCells(limits[index] ?? null),
		...(isStockKnown ? [feelWords(keepsFeel[index] ?? null)] : []),
	]);
	const stiff = strings.filter((_, index) => isStiff(limits[index] ?? null));
	return [
		STRINGS.head(name, tuning.name),
		...strings
			.filter(isNearBreaking)
			.map(({ string, strengthLeft }) => breaksOrNear(string, strengthLeft)),
		'',
		...textTable(isStockKnown ? STRINGS.columns : STRINGS.columns.slice(0, -1), rows),
		'',
		STRINGS.onNeck(
			{
				newtons: total.newtons,
				pounds: poundsForce(total.newtons),
				kilograms: kilogramsForce(total.newtons),
			},
			total.uncertainty,
			signed(total.newtons - totalNewtons(now).newtons, 0),
		),
		...(isStockKnown ? feelLines(set) : [STRINGS.stockUnknown]),
		...(stiff.length === 0 ? [] : [STRINGS.stiff(stiff.map(({ string }) => string))]),
		...(strings.some(({ uncertainty }) => uncertainty > 0) ? [STRINGS.estimated] : []),
	];
}

function limitCells(limits: StringLimits | null): readonly string[] {
	if (limits === null) return ['', ''];
	const { headroomSemitones, centsPerKelvin } = limits;
	return [STRINGS.toBreaking(headroomSemitones), STRINGS.perDegree(centsPerKelvin)];
}

function isStiff(limits: StringLimits | null): boolean {
	return limits !== null && partialSharpness(limits.inharmonicity, 12) >= STIFF_CENTS;
}

/** What the neck bears with every gauge of the same feel, and what thicker ones ask for besides. */
function feelLines({ strings, now, keepsFeel }: SetInTuning): readonly string[] {
	const choices = keepsFeel.filter((one) => one !== null && Math.abs(one.off) <= FURTHEST_OFF);
	if (choices.length < strings.length) return [];
	const newtons = choices.reduce((sum, one) => sum + (one?.newtons ?? 0), 0);
	const off = newtons / totalNewtons(now).newtons - 1;
	const isThicker = strings.some(
		({ make }, index) => (keepsFeel[index]?.make.millimetres ?? 0) > make.millimetres,
	);
	return [STRINGS.sameFeel(newtons, signed(off * 100, 1)), ...(isThicker ? [STRINGS.thicker] : [])];
}

function feelWords(choice: GaugeChoice | null): string {
	if (choice === null) return STRINGS.noneInStock;
	if (Math.abs(choice.off) > FURTHEST_OFF) return STRINGS.noneNear;
	return `${gaugeText(choice.make)} (${signed(choice.off * 100, 1)} %)`;
}
