// `rackside setup`: from what was measured at the bench to what to do, and into the gear journal.

import { dirname, resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import { showIdentity } from '../../disk/paths.ts';
import { gearId } from '../../gear/gear-id.ts';
import { bodyOf, remembered } from '../../gear/remembered.ts';
import { slotAndName } from '../../showfile/shown-names.ts';
import type { LengthUnit } from '../../tuning/length-unit.ts';
import { askedInstrument, askedNumber } from '../asked-instrument.ts';
import { askedSame } from '../asked-same.ts';
import { askedCents, askedFret } from '../asked-set-up.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { keepGear, readGear } from '../gear-journal.ts';
import type { Io } from '../io.ts';
import { placesOf } from '../places.ts';
import { readMeasures } from '../read-measures.ts';
import { pageJson, pageLines, setUpPage } from '../set-up-page.ts';
import { tellProblems } from '../tell-problems.ts';

const UNITS: readonly LengthUnit[] = ['mm', 'thou', '64ths'];

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
			words:
				'keep these and --at12: action, action-first, relief, pickup, nut, bass side first; or intonation for --at12 alone',
		},
		unit: { value: 'UNIT', words: 'mm (the default), thou or 64ths, for what is printed' },
		same: {
			value: 'YES OR NO',
			words:
				'whether what was measured under this id before was this very instrument; kept for good',
		},
		frets: { words: 'where each fret belongs on this scale' },
		feedback: { value: 'HZ', words: 'the equaliser band and notch for a body that rings there' },
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
		const feedback = askedNumber(request, 'feedback', { from: 25, to: 20_000, otherwise: 0 });
		if (!feedback.ok) return tellProblems(feedback.problems, io);
		const record = optionText(request, 'record');
		const isBare = record?.trim() === 'intonation' && at12.value !== null;
		const measures =
			record === null ? null : isBare ? ({ ok: true, value: {} } as const) : readMeasures(record);
		if (measures?.ok === false) return tellProblems(measures.problems, io);
		const places = placesOf(request, io);
		const folder = dirname(showIdentity(resolve(io.cwd, request.words[0] ?? '')));
		const gear = gearId(instrument, folder);
		const about = { gear, instrument, name: slotAndName(show, instrument.id) };
		const same = await askedSame(about, { request, io, entries: readGear(places).entries });
		if (!same.ok) return tellProblems(same.problems, io);
		for (const answer of same.value.answers) {
			const trouble = await keepGear(places, answer);
			if (trouble !== null) return notKept(trouble, io);
		}
		if (measures) {
			const trouble = await keepGear(places, {
				k: 'set-up-measured',
				at: io.wallMs(),
				gear,
				body: bodyOf(instrument),
				tuning: instrument.tuning.name,
				gauges: instrument.strings.map(
					({ millimetres, isWound }) => `${millimetres} mm${isWound ? ' w' : ''}`,
				),
				measures: measures.value,
				...(at12.value ? { at12: at12.value } : {}),
			});
			if (trouble !== null) return notKept(trouble, io);
		}
		const { entries, findings } = readGear(places);
		const page = setUpPage(instrument, {
			past: remembered(entries, { gear, instrument }).past,
			findings: [...findings, ...same.value.findings],
			cents: at12.value,
			hasFrets: request.options.frets === true,
			laid: laid.value,
			feedback: feedback.value,
		});
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

function notKept(trouble: string, io: Io): number {
	io.complain(`Not kept: ${cleanText(trouble)}\n`);
	return EXIT.notKept;
}
