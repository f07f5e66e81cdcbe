// `rackside tuning`: from one tuning to another on one instrument, string by string, to the ear too.

import { shapesInTuning } from '../../bench/song-shapes.ts';
import { shapeOnCard, tuningCard } from '../../bench/tuning-card.ts';
import {
	nearBreaking,
	type TuningPage,
	tuningPageJson,
	tuningPageLines,
} from '../../bench/tuning-page.ts';
import { onlyPlayer } from '../../showfile/instrument-strings.ts';
import type { Instrument } from '../../showfile/show.ts';
import type { ChordShape } from '../../tuning/chord-shape.ts';
import { parseShape, shapeOnStrings } from '../../tuning/chord-shape.ts';
import { KINDS } from '../../tuning/kind.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { kindWords } from '../../words/kinds.ts';
import {
	BAD_SHAPE,
	BAD_STRINGS,
	LEAVE_CAPO_OUT,
	shapeExpected,
	stringsExpected,
	takesNoCapo,
} from '../../words/requests.ts';
import { type Asked, askedNumber } from '../asked-number.ts';
import { askedInstrument, askedTuning, TO_OPTION } from '../bench/asked-instrument.ts';
import type { CliCommand, Request } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { tellProblems } from '../tell-problems.ts';

/** The highest fret that a song's part may name too. */
const CAPO_MOST = 12;

export const tuningCommand: CliCommand = {
	usage: 'tuning SHOW INSTRUMENT',
	about: [COMMAND_WORDS.tuning.about],
	example: 'rackside tuning shows/club.yaml A1 --to "drop D"',
	options: {
		...JSON_OPTION,
		...TO_OPTION,
		from: { value: 'TUNING', words: COMMAND_WORDS.tuning.options.from },
		capo: { value: 'FRET', words: COMMAND_WORDS.tuning.options.capo },
		covers: { value: 'STRINGS', words: COMMAND_WORDS.tuning.options.covers },
		reference: { value: 'HZ', words: COMMAND_WORDS.tuning.options.reference },
		shape: { value: 'FRETS', words: COMMAND_WORDS.tuning.options.shape },
	},
	words: { least: 2, most: 2 },
	run: async (request, io) => {
		const asked = await askedInstrument(request, io);
		if (!asked.ok) return tellProblems(asked.problems, io);
		const { show, instrument } = asked.value;
		const to = askedTuning(request, 'to', asked.value);
		const from = askedTuning(request, 'from', asked.value);
		const capo = askedNumber(request, 'capo', {
			from: 0,
			to: CAPO_MOST,
			isWhole: true,
			otherwise: 0,
		});
		const reference = askedNumber(request, 'reference', {
			from: 400,
			to: 480,
			otherwise: show.referenceHertz,
		});
		const shape = askedShape(request, instrument);
		const covers = askedStrings(request, instrument.tuning.notes.length);
		const parts = [to, from, capo, reference, shape, covers];
		if (!to.ok || !from.ok || !capo.ok || !reference.ok || !shape.ok || !covers.ok) {
			return tellProblems(
				parts.flatMap((part) => (part.ok ? [] : part.problems)),
				io,
			);
		}
		if (capo.value > 0 && !KINDS[instrument.kind].canTakeCapo) {
			const what = takesNoCapo(kindWords(instrument.kind));
			return tellProblems([{ code: 'no-capo', what, hint: LEAVE_CAPO_OUT }], io);
		}
		const card = tuningCard(show, {
			instrument,
			from: from.value,
			to: to.value,
			capo: capo.value,
			player: onlyPlayer(instrument),
			referenceHertz: reference.value,
			...(covers.value ? { covers: covers.value } : {}),
		});
		const page: TuningPage = {
			show,
			card,
			chord: shape.value ? shapeOnCard(card, shape.value) : null,
			songShapes: shapesInTuning(show, {
				instrument,
				tuning: to.value,
				referenceHertz: reference.value,
			}),
		};
		if (request.options.json) io.write(`${JSON.stringify(tuningPageJson(page))}\n`);
		else
			io.write(
				tuningPageLines(page)
					.map((line) => `${line}\n`)
					.join(''),
			);
		return nearBreaking(card).length > 0 ? EXIT.toLookAt : EXIT.fine;
	},
};

function askedShape(request: Request, { kind, tuning }: Instrument): Asked<ChordShape | null> {
	const text = optionText(request, 'shape');
	if (text === null) return { ok: true, value: null };
	const asked = { strings: tuning.notes.length, perCourse: KINDS[kind].stringsPerCourse };
	const shape = parseShape(text);
	if (shape && shapeOnStrings(shape, asked)) return { ok: true, value: shape };
	const expected = shapeExpected(asked.strings / asked.perCourse, asked.perCourse === 2);
	const what = BAD_SHAPE;
	return { ok: false, problems: [{ code: 'bad-shape', what, found: text, expected }] };
}

function askedStrings(request: Request, most: number): Asked<readonly number[] | null> {
	const text = optionText(request, 'covers');
	if (text === null) return { ok: true, value: null };
	const strings = text
		.trim()
		.split(/[\s,]+/)
		.map(Number);
	if (strings.every((one) => Number.isInteger(one) && one >= 1 && one <= most)) {
		return { ok: true, value: strings };
	}
	const expected = stringsExpected(most);
	const what = BAD_STRINGS;
	return { ok: false, problems: [{ code: 'bad-strings', what, found: text, expected }] };
}
