// `rackside strings`: what each string of an instrument bears in a tuning, and which gauges at hand would
// keep the feel.

import { textTable } from '../../report/text-table.ts';
import { makesAtHand, onlyPlayer, stringsOf } from '../../showfile/instrument-strings.ts';
import type { Instrument, Show } from '../../showfile/show.ts';
import { slotAndName } from '../../showfile/shown-names.ts';
import { parseScale } from '../../showfile/string-measure.ts';
import type { GaugeChoice } from '../../tuning/stock-gauge.ts';
import { gaugeFor, SAME_FEEL } from '../../tuning/stock-gauge.ts';
import type { StringMake } from '../../tuning/string-material.ts';
import type { BearingString } from '../../tuning/string-set.ts';
import { balance, LEAST_STRENGTH_LEFT, totalNewtons } from '../../tuning/string-set.ts';
import { kilogramsForce, partialSharpness, poundsForce } from '../../tuning/string-tension.ts';
import type { Tuning } from '../../tuning/tuning.ts';
import type { Asked } from '../asked-instrument.ts';
import { askedInstrument, askedTuning, TO_OPTION } from '../asked-instrument.ts';
import type { CliCommand, Request } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { signed, to4 } from '../figures.ts';
import { tellProblems } from '../tell-problems.ts';

export const stringsCommand: CliCommand = {
	usage: 'strings SHOW INSTRUMENT',
	about: [
		'Says what each string bears in a tuning: tension, stress, semitones to breaking, cents a kelvin,',
		'stiffness; and the gauges in stock that keep the tension of the present set in its own tuning.',
		'Plain steel is exact; wound strings and nylon are a model, with how far it can be off.',
		'Ends with 1 when a string has less than 15 % of its strength left.',
	],
	example: 'rackside strings shows/club.yaml A1 --to "drop C"',
	options: {
		...JSON_OPTION,
		...TO_OPTION,
		scale: { value: 'LENGTH', words: 'another scale, such as "24.75 in" or "628 mm"' },
	},
	words: { least: 2, most: 2 },
	run: async (request, io) => {
		const asked = await askedInstrument(request, io);
		if (!asked.ok) return tellProblems(asked.problems, io);
		const { show, instrument } = asked.value;
		const to = askedTuning(request, 'to', asked.value);
		const scale = askedScale(request, instrument);
		if (!to.ok) return tellProblems(to.problems, io);
		if (!scale.ok) return tellProblems(scale.problems, io);
		const set = setInTuning({ show, instrument, tuning: to.value, scale: scale.value });
		if (set.strings.length === 0) return tellProblems([noStrings(instrument)], io);
		if (request.options.json) io.write(`${JSON.stringify(setJson(set))}\n`);
		else
			io.write(
				setLines(set, slotAndName(show, instrument.id))
					.map((line) => `${line}\n`)
					.join(''),
			);
		return set.strings.some(isNearBreaking) ? EXIT.toLookAt : EXIT.fine;
	},
};

function askedScale(request: Request, instrument: Instrument): Asked<number | null> {
	const text = optionText(request, 'scale');
	if (text === null) return { ok: true, value: instrument.scaleMillimetres };
	const value = parseScale(text);
	if (value !== null) return { ok: true, value };
	const expected = 'inches or millimetres with their unit, such as 25.5 in or 648 mm';
	const what = '--scale is not a scale length';
	return { ok: false, problems: [{ code: 'bad-scale', what, found: text, expected }] };
}

function noStrings({ id, strings }: Instrument) {
	return {
		code: 'no-strings',
		what: `${id} has no ${strings.length === 0 ? 'strings' : 'scale'} in the show file, so nothing can be reckoned`,
		hint: 'Add strings: [10, 13, 17, 26w, 36w, 46w] and scale: 25.5 in, as they are.',
	};
}

type SetAsked = {
	readonly show: Show;
	readonly instrument: Instrument;
	readonly tuning: Tuning;
	readonly scale: number | null;
};

type SetInTuning = {
	readonly id: string;
	readonly tuning: Tuning;
	readonly strings: readonly BearingString[];
	/** As it is now, on its own scale in its own tuning. */
	readonly now: readonly BearingString[];
	/** A gauge at hand for each string that keeps its present tension; null where none is at hand. */
	readonly keepsFeel: readonly (GaugeChoice | null)[];
};

function setInTuning({ show, instrument, tuning, scale }: SetAsked): SetInTuning {
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
	return { id: instrument.id, tuning, strings, now, keepsFeel };
}

function isNearBreaking({ strengthLeft }: BearingString): boolean {
	return strengthLeft !== null && strengthLeft < LEAST_STRENGTH_LEFT;
}

/** The fields that others rely on, and more. */
function setJson({ id, tuning, strings, now, keepsFeel }: SetInTuning) {
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
			headroomSemitones: orNull(one.headroomSemitones),
			headroomLeastSemitones: orNull(one.headroomLeast),
			centsPerKelvin: orNull(one.centsPerKelvin),
			inharmonicity: one.inharmonicity === null ? null : Number(one.inharmonicity.toPrecision(6)),
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

function gaugeWords(make: StringMake): string {
	return `${Number((inches(make) * 1000).toFixed(1))}${make.isWound ? 'w' : ''}`;
}

/** Where stiffness is heard: from this many cents in the twelfth partial on (common practice, no source). */
const STIFF_CENTS = 10;
/** A gauge this far from the wanted tension is no substitute (common practice, no source). */
const FURTHEST_OFF = 0.1;

function setLines(set: SetInTuning, name: string): readonly string[] {
	const { strings, now, keepsFeel, tuning } = set;
	const total = totalNewtons(strings);
	const shares = balance(strings);
	const rows = strings.map((one, index) => [
		String(one.string),
		gaugeWords(one.make),
		`${one.newtons.toFixed(1)} N${one.uncertainty > 0 ? ` ± ${one.uncertainty * 100} %` : ''}`,
		`${poundsForce(one.newtons).toFixed(1)} lbf`,
		`${kilogramsForce(one.newtons).toFixed(2)} kgf`,
		`${signed(((shares[index] ?? 1) - 1) * 100, 0)} %`,
		one.headroomSemitones === null ? '' : `${one.headroomSemitones.toFixed(1)} to breaking`,
		one.centsPerKelvin === null ? '' : `${one.centsPerKelvin.toFixed(1)} c/K`,
		feelWords(keepsFeel[index] ?? null),
	]);
	const stiff = strings.filter(
		({ inharmonicity }) =>
			inharmonicity !== null && partialSharpness(inharmonicity, 12) >= STIFF_CENTS,
	);
	return [
		`${name} in ${tuning.name}`,
		'',
		...textTable(
			['string', 'gauge', 'tension', '', '', 'of mean', 'semitones', 'at most', 'same feel'],
			rows,
		),
		'',
		`On the neck: ${total.newtons.toFixed(0)} N, ${poundsForce(total.newtons).toFixed(0)} lbf, ${kilogramsForce(total.newtons).toFixed(1)} kgf${total.uncertainty > 0 ? `, ± ${(total.uncertainty * 100).toFixed(0)} %` : ''}; ${signed(total.newtons - totalNewtons(now).newtons, 0)} N from its own tuning.`,
		...strings
			.filter(isNearBreaking)
			.map(({ string }) => `String ${string} is near breaking. Keep eyes away, or choose another.`),
		...feelLines(set),
		...(stiff.length === 0
			? []
			: [
					`Stiff: string ${stiff.map(({ string }) => string).join(', ')}. Partials run sharp; tune by the low ones.`,
				]),
		...(strings.some(({ uncertainty }) => uncertainty > 0)
			? ['Wound strings are reckoned by a model; unit-mass in the show file makes them exact.']
			: []),
	];
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
	return [
		`With the gauges of the same feel: ${newtons.toFixed(0)} N, ${signed(off * 100, 1)} % of what it bears now.`,
		...(isThicker
			? [
					'Thicker strings: look at relief and intonation, and that none sticks in the nut. Cutting its slots is a luthier’s work.',
				]
			: []),
	];
}

function feelWords(choice: GaugeChoice | null): string {
	if (choice === null) return 'none in stock';
	if (Math.abs(choice.off) > FURTHEST_OFF) return 'none near';
	return `${gaugeWords(choice.make)} (${signed(choice.off * 100, 1)} %)`;
}
