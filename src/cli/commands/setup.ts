// `rackside setup`: from what was measured at the bench to what to do, and into the gear journal.

import { dirname, resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import { pageJson, pageLines, setUpPage } from '../../bench/set-up-page.ts';
import { showIdentity } from '../../disk/paths.ts';
import { gearId } from '../../gear/gear-id.ts';
import { bodyOf, remembered } from '../../gear/remembered.ts';
import { shownInstrument } from '../../showfile/shown-names.ts';
import type { LengthUnit } from '../../tuning/length-unit.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { KEPT_IN_GEAR, notKept } from '../../words/gear-journal.ts';
import { ADD_SCALE, BAD_UNIT, noScale } from '../../words/requests.ts';
import { askedInstrument } from '../bench/asked-instrument.ts';
import { askedSame } from '../bench/asked-same.ts';
import { askedCents, askedFret, askedRinging } from '../bench/asked-set-up.ts';
import { keepGear, readGear } from '../bench/gear-journal.ts';
import { readMeasures } from '../bench/read-measures.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { placesOf } from '../places.ts';
import { tellProblems } from '../tell-problems.ts';

const UNITS: readonly LengthUnit[] = ['mm', 'thou', '64ths'];

export const setupCommand: CliCommand = {
	usage: 'setup SHOW INSTRUMENT',
	about: [COMMAND_WORDS.setup.about],
	example: 'rackside setup shows/club.yaml A1 --at12 "0 2 5 -1 0 3"',
	options: {
		...JSON_OPTION,
		at12: { value: 'CENTS', words: COMMAND_WORDS.setup.options.at12 },
		record: {
			value: 'MEASURES',
			words: COMMAND_WORDS.setup.options.record,
		},
		unit: { value: 'UNIT', oneOf: UNITS, words: COMMAND_WORDS.setup.options.unit },
		same: { value: 'ANSWER', oneOf: ['yes', 'no'], words: COMMAND_WORDS.setup.options.same },
		frets: { words: COMMAND_WORDS.setup.options.frets },
		feedback: { value: 'HZ', words: COMMAND_WORDS.setup.options.feedback },
		fret: { value: 'FRET', words: COMMAND_WORDS.setup.options.fret },
	},
	words: { least: 2, most: 2 },
	run: async (request, io) => {
		const asked = await askedInstrument(request, io);
		if (!asked.ok) return tellProblems(asked.problems, io);
		const { show, instrument } = asked.value;
		const unit = UNITS.find((one) => one === (optionText(request, 'unit') ?? 'mm'));
		if (unit === undefined) {
			const found = cleanText(optionText(request, 'unit') ?? '');
			const problem = { code: 'bad-unit', what: BAD_UNIT, found };
			return tellProblems([{ ...problem, expected: UNITS.join(', ') }], io);
		}
		const at12 = askedCents(request, instrument);
		if (!at12.ok) return tellProblems(at12.problems, io);
		if (
			instrument.scaleMillimetres === null &&
			(at12.value || request.options.frets || request.options.fret)
		) {
			const what = noScale(instrument.id);
			return tellProblems([{ code: 'no-scale', what, hint: ADD_SCALE }], io);
		}
		const laid = askedFret(request, instrument.scaleMillimetres);
		if (!laid.ok) return tellProblems(laid.problems, io);
		const feedback = askedRinging(request, show.referenceHertz);
		if (!feedback.ok) return tellProblems(feedback.problems, io);
		const record = optionText(request, 'record');
		const isBare = record?.trim() === 'intonation' && at12.value !== null;
		const isRing = record?.trim() === 'feedback' && feedback.value !== 0;
		const measures =
			record === null || isRing
				? null
				: isBare
					? ({ ok: true, value: {} } as const)
					: readMeasures(record);
		if (measures?.ok === false) return tellProblems(measures.problems, io);
		const places = placesOf(request, io);
		const folder = dirname(showIdentity(resolve(io.cwd, request.words[0] ?? '')));
		const gear = gearId(instrument, folder);
		const about = { gear, instrument, name: shownInstrument(show, instrument.id) };
		const known = readGear(places);
		const same = await askedSame(about, { request, io, entries: known.entries });
		if (!same.ok) return tellProblems(same.problems, io);
		for (const answer of same.value.answers) {
			const trouble = await keepGear(places, answer);
			if (trouble !== null) return tellNotKept(trouble, io);
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
			if (trouble !== null) return tellNotKept(trouble, io);
		}
		if (isRing) {
			const trouble = await keepGear(places, {
				...{ k: 'feedback-noted', at: io.wallMs(), gear, hertz: feedback.value },
			});
			if (trouble !== null) return tellNotKept(trouble, io);
		}
		const isKept = isRing || measures !== null || same.value.answers.length > 0;
		const { entries, findings } = isKept ? readGear(places) : known;
		const page = setUpPage(instrument, {
			past: remembered(entries, { gear, instrument }).past,
			findings: [...same.value.findings, ...(request.options.json ? findings : [])],
			cents: at12.value,
			hasFrets: request.options.frets === true,
			laid: laid.value,
			feedback: feedback.value,
			referenceHertz: show.referenceHertz,
			isoTime: (atMs) => new Date(atMs).toISOString(),
		});
		if (request.options.json) io.write(`${JSON.stringify(pageJson(page))}\n`);
		else {
			const lines = pageLines(page, { unit, name: shownInstrument(show, instrument.id) });
			io.write(
				[...lines, ...(measures || isRing ? [KEPT_IN_GEAR] : [])]
					.map((line) => `${line}\n`)
					.join(''),
			);
		}
		for (const one of findings) io.complain(`${cleanText(one)}\n`);
		return findings.length === 0 ? EXIT.fine : EXIT.toLookAt;
	},
};

function tellNotKept(trouble: string, io: Io): number {
	io.complain(`${notKept(cleanText(trouble))}\n`);
	return EXIT.notKept;
}
