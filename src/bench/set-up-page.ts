// An instrument's set-up as data and in lines: saddles, targets, what was measured and what drifted.

import type { Measured } from '../gear/gear-entry.ts';
import { type MeasuredDrift, measuredDrift } from '../gear/measured-drift.ts';
import type { Instrument } from '../showfile/show.ts';
import { fretFromNut } from '../tuning/fret-places.ts';
import { type LengthUnit, lengthWords } from '../tuning/length-unit.ts';
import { type SaddleMove, saddleMove, screwTurns } from '../tuning/saddle.ts';
import type { SetUpDrift, SetUpMeasures } from '../tuning/set-up-drift.ts';
import { setUpDrift, usualSetUp } from '../tuning/set-up-drift.ts';
import { trussRodWords } from '../words/bench-advice.ts';
import { SETUP } from '../words/bench-pages.ts';
import { feedbackJson, feedbackWords } from './feedback.ts';
import { signed, to4 } from './figures.ts';
import { FRETS, type LaidFret } from './laid-fret.ts';
import { MEASURE_NAMES } from './measure-names.ts';
import { ringingJson, ringingLines } from './ringing.ts';

/** A wall clock, in milliseconds since 1970, as ISO 8601 writes it. */
type IsoTime = (atMs: number) => string;

type SaddleOf = SaddleMove & {
	readonly string: number;
	readonly cents: number;
	readonly turns: number | null;
};

export type SetUpPage = {
	readonly instrument: Instrument;
	readonly saddle: readonly SaddleOf[];
	readonly measured: SetUpMeasures;
	/** The newest first. */
	readonly past: readonly Measured[];
	readonly drift: readonly SetUpDrift[];
	readonly frets: readonly number[] | null;
	readonly laid: LaidFret | null;
	/** Hz of a body that rings; 0 when not asked about. */
	readonly feedback: number;
	readonly referenceHertz: number;
	readonly findings: readonly string[];
	readonly isoTime: IsoTime;
};

/** What a page is asked for beside the instrument. */
export type PageAsked = {
	/** What was ever measured on it, the newest first. */
	readonly past: readonly Measured[];
	/** What was noticed about that, a sentence each. */
	readonly findings: readonly string[];
	/** At the 12th fret, highest-numbered string first; null for those kept last. */
	readonly cents: readonly number[] | null;
	readonly hasFrets: boolean;
	readonly laid: LaidFret | null;
	readonly feedback: number;
	readonly referenceHertz: number;
	readonly isoTime: IsoTime;
};

/** The set-up of an instrument as it was measured last. */
export function setUpPage(instrument: Instrument, asked: PageAsked): SetUpPage {
	const { past, findings } = asked;
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
		asked.hasFrets && scale !== null
			? Array.from({ length: FRETS }, (_, index) => fretFromNut(scale, index + 1))
			: null;
	const drift = setUpDrift(instrument.setUp ?? {}, measured);
	return {
		instrument,
		saddle,
		measured,
		past,
		drift,
		frets,
		laid: asked.laid,
		feedback: asked.feedback,
		referenceHertz: asked.referenceHertz,
		findings,
		isoTime: asked.isoTime,
	};
}

/** Of each measure the newest, whichever record has it. */
function newestMeasures(past: readonly Measured[]): SetUpMeasures {
	const all: Readonly<Record<string, readonly number[]>> = Object.assign(
		{},
		...past.toReversed().map(({ measures }) => measures),
	);
	const { relief, ...others } = all;
	return { ...others, ...(relief?.[0] === undefined ? {} : { relief: relief[0] }) };
}

function ringingOf(page: Pick<SetUpPage, 'feedback' | 'instrument' | 'referenceHertz'>) {
	const { feedback: hertz, instrument, referenceHertz } = page;
	return { hertz, instrument, tuning: instrument.tuning, referenceHertz };
}

/** The fields that others rely on, and more. */
export function pageJson({
	instrument,
	saddle,
	measured,
	past,
	drift,
	frets,
	laid,
	feedback,
	referenceHertz,
	findings,
	isoTime,
}: SetUpPage) {
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
		measuredAt: past[0] ? isoTime(past[0].at) : null,
		drift,
		since: measuredDrift(past),
		history: past.map((entry) => ({
			at: isoTime(entry.at),
			tuning: entry.tuning,
			measures: entry.measures,
			at12: entry.at12 ?? null,
		})),
		trussRod: rodWords(instrument, measured),
		...(frets === null ? {} : { frets: frets.map(to4) }),
		...(laid === null ? {} : { fret: laid }),
		...(feedback === 0
			? {}
			: {
					feedback: {
						...feedbackJson(feedback),
						...ringingJson(ringingOf({ feedback, instrument, referenceHertz })),
					},
				}),
		findings,
	};
}

function rodWords({ setUp }: Instrument, { relief }: SetUpMeasures): readonly string[] {
	return setUp?.relief === undefined || relief === undefined
		? []
		: trussRodWords(setUp.relief, relief);
}

/** The page as it is printed. */
export function pageLines(
	page: SetUpPage,
	{ unit, name }: { readonly unit: LengthUnit; readonly name: string },
): readonly string[] {
	const { instrument, saddle, measured, past, drift, frets, isoTime } = page;
	const words = (lengths: readonly number[] | number | undefined) =>
		[lengths ?? []]
			.flat()
			.map((one) => lengthWords(one, unit))
			.join(' / ');
	const rod = rodWords(instrument, measured);
	const measures = Object.entries(MEASURE_NAMES).flatMap(([label, key]) => {
		const usual = words(usualSetUp(instrument.kind)?.[key]);
		const wanted = words(instrument.setUp?.[key]) || SETUP.noTarget(usual);
		const found = words(measured[key]);
		if (instrument.setUp?.[key] === undefined && found === '') return [];
		const off = drift.find(({ what }) => what === key)?.millimetres ?? [];
		const isOff = off.some((one) => one !== 0);
		const much = off.map((one) => (one > 0 ? '+' : '') + lengthWords(one, unit)).join(' / ');
		const read = found || SETUP.never;
		const line = SETUP.measure(label, wanted, isOff ? SETUP.off(read, much) : read);
		return key === 'relief' ? [line, ...rod] : [line];
	});
	const saddles = saddle.map(({ string, cents, millimetres, towards, turns }) =>
		towards === 'none'
			? SETUP.right(string)
			: SETUP.saddle(
					string,
					signed(cents, 1),
					`${SETUP.towards(lengthWords(millimetres, unit), towards)}${turns === null ? '' : SETUP.turns(turns)}`,
				),
	);
	const date = past[0] ? isoTime(past[0].at).slice(0, 10) : null;
	return [
		SETUP.head(name, date),
		...measures,
		...measuredDrift(past).map((one) => sinceLine(one, unit)),
		...(saddles.length === 0
			? [SETUP.noIntonation]
			: [...(rod.length === 0 ? [] : [SETUP.reliefFirst]), ...saddles, SETUP.slacken]),
		...(frets ?? []).map((one, index) => SETUP.fretPlace(index + 1, lengthWords(one, unit))),
		...(page.laid === null ? [] : laidLines(page.laid, unit)),
		...(page.feedback === 0
			? []
			: [...ringingLines(ringingOf(page)).slice(0, 2), feedbackWords(page.feedback)]),
		...page.findings,
	];
}

const LABELS = Object.fromEntries(
	Object.entries(MEASURE_NAMES).map(([label, key]) => [key as string, label]),
);

function sinceLine({ what, change, days }: MeasuredDrift, unit: LengthUnit): string {
	const isCents = what === 'at12';
	const by = change.map((one) =>
		isCents ? signed(one, 1) : `${one > 0 ? '+' : ''}${lengthWords(one, unit)}`,
	);
	const name = isCents ? SETUP.at12 : (LABELS[what] ?? what);
	const since = days === 0 ? SETUP.sameDay : SETUP.days(days);
	return SETUP.went(name, `${by.join(isCents ? ' ' : ' / ')}${isCents ? ' c' : ''}`, since);
}

function laidLines({ fret, cents, scaleMm }: LaidFret, unit: LengthUnit): readonly string[] {
	const out = Math.abs(cents) < 0.5 ? SETUP.fretRight : SETUP.fretOff(signed(cents, 1));
	return [SETUP.laid(fret, out, lengthWords(scaleMm, unit)), SETUP.luthier];
}
