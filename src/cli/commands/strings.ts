// `rackside strings`: what an instrument's strings bear in a tuning, on this scale or another.

import { isNearBreaking, setInTuning, setJson, setLines } from '../../bench/strings-page.ts';
import type { Instrument } from '../../showfile/show.ts';
import { shownInstrument } from '../../showfile/shown-names.ts';
import { parseScale } from '../../showfile/string-measure.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import {
	ADD_STRINGS,
	BAD_SCALE,
	noStrings as noStringsWords,
	SCALE_EXPECTED,
} from '../../words/requests.ts';
import type { Asked } from '../asked-number.ts';
import { askedInstrument, askedTuning, TO_OPTION } from '../bench/asked-instrument.ts';
import type { CliCommand, Request } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { tellProblems } from '../tell-problems.ts';

export const stringsCommand: CliCommand = {
	usage: 'strings SHOW INSTRUMENT',
	about: [COMMAND_WORDS.strings.about],
	example: 'rackside strings shows/club.yaml A1 --to "drop C"',
	options: {
		...JSON_OPTION,
		...TO_OPTION,
		scale: { value: 'LENGTH', words: COMMAND_WORDS.strings.options.scale },
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
				setLines(set, shownInstrument(show, instrument.id))
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
	const expected = SCALE_EXPECTED;
	const what = BAD_SCALE;
	return { ok: false, problems: [{ code: 'bad-scale', what, found: text, expected }] };
}

function noStrings({ id, strings }: Instrument) {
	return {
		code: 'no-strings',
		what: noStringsWords(id, strings.length === 0 ? 'strings' : 'scale'),
		hint: ADD_STRINGS,
	};
}
