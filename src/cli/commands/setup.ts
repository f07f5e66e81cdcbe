// `rackside setup`: from what was measured at the bench to what to do, and into the gear journal.

import { cleanText } from '../../base/clean-text.ts';
import { measuredOn } from '../../journal/gear-entry.ts';
import type { Instrument } from '../../showfile/show.ts';
import { slotAndName } from '../../showfile/shown-names.ts';
import { fretError, fretFromNut, scaleFor } from '../../tuning/fret-places.ts';
import { type LengthUnit, lengthWords, parseLength } from '../../tuning/length-unit.ts';
import { type SaddleMove, saddleMove, screwTurns } from '../../tuning/saddle.ts';
import type { SetUpDrift, SetUpMeasures } from '../../tuning/set-up-drift.ts';
import { setUpDrift, trussRodWords, usualSetUp } from '../../tuning/set-up-drift.ts';
import type { Asked } from '../asked-instrument.ts';
import { askedInstrument } from '../asked-instrument.ts';
import type { CliCommand, Request } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { signed, to4 } from '../figures.ts';
import { keepMeasured, readGear } from '../gear-journal.ts';
import type { Io } from '../io.ts';
import { placesOf } from '../places.ts';
import { MEASURE_NAMES, readMeasures } from '../read-measures.ts';
import { tellProblems } from '../tell-problems.ts';

const UNITS: readonly LengthUnit[] = ['mm', 'thou', '64ths'];
/** A reading further out is a slip, or the next fret. */
const MOST_CENTS = 50;
const FRETS = 24;

export const setupCommand: CliCommand = {
	usage: 'setup SHOW INSTRUMENT',
	about: [
		'Says how far each saddle goes and which way, from the cents that the 12th fret reads against the',
		'octave; what drifted from the targets in the show file; and keeps what was measured, by',
		'instrument, in the gear journal of the data folder. Measure at pitch, in playing position.',
	],
	example: 'rackside setup shows/club.yaml A1 --at12 "0 2 5 -1 0 3"',
	options: {
		...JSON_OPTION,
		at12: { value: 'CENTS', words: 'what each 12th fret reads, highest-numbered string first' },
		record: {
			value: 'MEASURES',
			words: 'keep these and --at12: action, action-first, relief, pickup, nut; bass side first',
		},
		unit: { value: 'UNIT', words: 'mm (the default), thou or 64ths, for what is printed' },
		frets: { words: 'where each fret belongs on this scale' },
		fret: { value: 'N LENGTH', words: 'how far a fret at this distance from the nut is out' },
	},
	words: { least: 2, most: 2 },
	run: async (request, io) => {
		const asked = await askedInstrument(request, io);
		if (!asked.ok) return tellProblems(asked.problems, io);
		const { show, instrument } = asked.value;
		const unit = UNITS.find((one) => one === (optionText(request, 'unit') ?? 'mm'));
		if (unit === undefined) {
			const found = cleanText(optionText(request, 'unit') ?? '');
			const problem = { code: 'bad-unit', what: '--unit is not one that is known', found };
			return tellProblems([{ ...problem, expected: UNITS.join(', ') }], io);
		}
		const at12 = askedCents(request, instrument);
		if (!at12.ok) return tellProblems(at12.problems, io);
		if (
			instrument.scaleMillimetres === null &&
			(at12.value || request.options.frets || request.options.fret)
		) {
			const what = `${instrument.id} has no scale in the show file`;
			return tellProblems([{ code: 'no-scale', what, hint: 'Add scale: 25.5 in.' }], io);
		}
		const laid = askedFret(request, instrument.scaleMillimetres);
		if (!laid.ok) return tellProblems(laid.problems, io);
		const record = optionText(request, 'record');
		const measures = record === null ? null : readMeasures(record);
		if (measures?.ok === false) return tellProblems(measures.problems, io);
		if (measures) {
			const kept = await keepMeasured(placesOf(request, io), {
				k: 'set-up-measured',
				at: io.wallMs(),
				instrument: instrument.id,
				tuning: instrument.tuning.name,
				gauges: instrument.strings.map(
					({ millimetres, isWound }) => `${millimetres} mm${isWound ? ' w' : ''}`,
				),
				measures: measures.value,
				...(at12.value ? { at12: at12.value } : {}),
			});
			if (kept !== null) {
				io.complain(`Not kept: ${cleanText(kept)}\n`);
				return EXIT.notKept;
			}
		}
		const page = benchPage(instrument, { request, io, cents: at12.value, laid: laid.value });
		if (request.options.json) io.write(`${JSON.stringify(pageJson(page))}\n`);
		else {
			const lines = pageLines(page, { unit, name: slotAndName(show, instrument.id) });
			io.write(
				[...lines, ...(measures ? ['Kept in the gear journal.'] : [])]
					.map((line) => `${line}\n`)
					.join(''),
			);
		}
		return EXIT.fine;
	},
};

function askedCents(request: Request, instrument: Instrument): Asked<readonly number[] | null> {
	const text = optionText(request, 'at12');
	if (text === null) return { ok: true, value: null };
	const words = text.trim().split(/[\s,;]+/);
	const cents = words.map((word) =>
		/^[+-]?\d+(?:\.\d+)?$/.test(word) ? Number(word) : Number.NaN,
	);
	const count = instrument.tuning.notes.length;
	if (cents.length === count && cents.every((one) => Math.abs(one) <= MOST_CENTS)) {
		return { ok: true, value: cents };
	}
	const expected = `${count} numbers from -${MOST_CENTS} to ${MOST_CENTS}, string ${count} first`;
	const what = '--at12 is not one reading a string';
	return { ok: false, problems: [{ code: 'bad-cents', what, found: cleanText(text), expected }] };
}

type LaidFret = {
	readonly fret: number;
	readonly fromNutMm: number;
	/** Sharp of its place; negative: flat. */
	readonly cents: number;
	/** The scale for which it would be right. */
	readonly scaleMm: number;
};

function askedFret(request: Request, scale: number | null): Asked<LaidFret | null> {
	const text = optionText(request, 'fret');
	if (text === null) return { ok: true, value: null };
	const [, fret = '', length = ''] = /^\s*(\d{1,2})\s+(.+)$/.exec(text) ?? [];
	const fromNut = /^\d+(?:\.\d+)?$/.test(length.trim()) ? Number(length) : parseLength(length);
	const isFret = Number(fret) >= 1 && Number(fret) <= FRETS;
	if (fromNut !== null && scale !== null && isFret && fromNut > 0 && fromNut < scale) {
		const laid = { scale, fret: Number(fret), fromNut };
		return {
			ok: true,
			value: {
				fret: laid.fret,
				fromNutMm: to4(fromNut),
				cents: to4(fretError(laid)),
				scaleMm: to4(scaleFor(laid.fret, fromNut)),
			},
		};
	}
	const expected = `a fret from 1 to ${FRETS} and its distance from the nut, such as "12 323.85"`;
	const what = '--fret cannot be read';
	return { ok: false, problems: [{ code: 'bad-fret', what, found: cleanText(text), expected }] };
}

type SaddleOf = SaddleMove & {
	readonly string: number;
	readonly cents: number;
	readonly turns: number | null;
};

type BenchPage = {
	readonly instrument: Instrument;
	readonly saddle: readonly SaddleOf[];
	readonly measured: SetUpMeasures;
	readonly measuredAtMs: number | null;
	readonly drift: readonly SetUpDrift[];
	readonly frets: readonly number[] | null;
	readonly laid: LaidFret | null;
	readonly findings: readonly string[];
};

function benchPage(
	instrument: Instrument,
	asked: {
		readonly request: Request;
		readonly io: Io;
		readonly cents: readonly number[] | null;
		readonly laid: LaidFret | null;
	},
): BenchPage {
	const { request, io } = asked;
	const { records, findings } = readGear(placesOf(request, io));
	const past = measuredOn(records, instrument.id);
	const measured = newestMeasures(past);
	const cents = asked.cents ?? past.find(({ at12 }) => at12)?.at12 ?? [];
	const scale = instrument.scaleMillimetres;
	const screw = instrument.setUp?.saddleScrew;
	const saddle =
		scale === null
			? []
			: cents.map((one, index): SaddleOf => {
					const move = saddleMove(scale, one);
					const turns = screw === undefined ? null : screwTurns(move.millimetres, screw);
					return { ...move, string: cents.length - index, cents: one, turns };
				});
	const frets =
		request.options.frets && scale !== null
			? Array.from({ length: FRETS }, (_, index) => fretFromNut(scale, index + 1))
			: null;
	const drift = setUpDrift(instrument.setUp ?? {}, measured);
	return {
		instrument,
		saddle,
		measured,
		measuredAtMs: past[0]?.at ?? null,
		drift,
		frets,
		laid: asked.laid,
		findings,
	};
}

/** Of each measure the newest, whichever record has it. */
function newestMeasures(past: ReturnType<typeof measuredOn>): SetUpMeasures {
	const all: Readonly<Record<string, readonly number[]>> = Object.assign(
		{},
		...past.toReversed().map(({ measures }) => measures),
	);
	const { relief, ...others } = all;
	return { ...others, ...(relief?.[0] === undefined ? {} : { relief: relief[0] }) };
}

/** The fields that others rely on, and more. */
function pageJson({
	instrument,
	saddle,
	measured,
	measuredAtMs,
	drift,
	frets,
	laid,
	findings,
}: BenchPage) {
	return {
		instrument: instrument.id,
		saddle: saddle.map(({ string, cents, millimetres, towards, turns }) => ({
			string,
			cents,
			moveMm: to4(millimetres),
			towards,
			...(turns === null ? {} : { turns: to4(turns) }),
		})),
		targets: instrument.setUp ?? null,
		usual: usualSetUp(instrument.kind),
		measured,
		measuredAt: measuredAtMs === null ? null : new Date(measuredAtMs).toISOString(),
		drift,
		trussRod: rodWords(instrument, measured),
		...(frets === null ? {} : { frets: frets.map(to4) }),
		...(laid === null ? {} : { fret: laid }),
		findings,
	};
}

function rodWords({ setUp }: Instrument, { relief }: SetUpMeasures): readonly string[] {
	return setUp?.relief === undefined || relief === undefined
		? []
		: trussRodWords(setUp.relief, relief);
}

function pageLines(
	page: BenchPage,
	{ unit, name }: { readonly unit: LengthUnit; readonly name: string },
): readonly string[] {
	const { instrument, saddle, measured, measuredAtMs, drift, frets } = page;
	const words = (lengths: readonly number[] | number | undefined) =>
		[lengths ?? []]
			.flat()
			.map((one) => lengthWords(one, unit))
			.join(' / ');
	const measures = Object.entries(MEASURE_NAMES).flatMap(([label, key]) => {
		const usual = words(usualSetUp(instrument.kind)?.[key]);
		const wanted =
			words(instrument.setUp?.[key]) || (usual === '' ? 'not said' : `not said (usual ${usual})`);
		const found = words(measured[key]);
		if (instrument.setUp?.[key] === undefined && found === '') return [];
		const off = drift.find(({ what }) => what === key)?.millimetres ?? [];
		const isOff = off.some((one) => one !== 0);
		const much = off.map((one) => (one > 0 ? '+' : '') + lengthWords(one, unit)).join(' / ');
		return [`${label}: wanted ${wanted}, measured ${found || 'never'}${isOff ? ` (${much})` : ''}`];
	});
	const saddles = saddle.map(({ string, cents, millimetres, towards, turns }) =>
		towards === 'none'
			? `string ${string}: right`
			: `string ${string}: ${signed(cents, 1)} c, saddle ${lengthWords(millimetres, unit)} towards the ${towards}${turns === null ? '' : `, ${turns.toFixed(2)} turns`}`,
	);
	const date = measuredAtMs === null ? 'never' : new Date(measuredAtMs).toISOString().slice(0, 10);
	return [
		`${name}: last measured ${date}`,
		...measures,
		...(saddles.length === 0
			? ['No intonation: give --at12 what the 12th fret of each string reads.']
			: [...saddles, 'Slacken a string before its saddle moves; tune and read again after it.']),
		...rodWords(instrument, measured),
		...(frets ?? []).map(
			(one, index) => `fret ${index + 1}: ${lengthWords(one, unit)} from the nut`,
		),
		...(page.laid === null ? [] : laidLines(page.laid, unit)),
		...page.findings,
	];
}

function laidLines({ fret, cents, scaleMm }: LaidFret, unit: LengthUnit): readonly string[] {
	const out = Math.abs(cents) < 0.5 ? 'where it belongs' : `${signed(cents, 1)} c from its place`;
	return [
		`fret ${fret}: ${out}; right for a scale of ${lengthWords(scaleMm, unit)}`,
		'Fret, nut and bridge places are a luthier’s work.',
	];
}
