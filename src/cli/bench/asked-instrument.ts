// What the commands of the bench ask for: an instrument of a show, a tuning it can be brought to; each with the
// sentence for what cannot be used.

import { cleanText } from '../../base/clean-text.ts';
import type { Instrument, Show } from '../../showfile/show.ts';
import type { Tuning } from '../../tuning/tuning.ts';
import { readTuning } from '../../tuning/tuning.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { AN_INSTRUMENT, NO_INSTRUMENT, notATuning } from '../../words/requests.ts';
import { tuningExpectedWords, tuningHintWords } from '../../words/unread-tuning.ts';
import type { Asked } from '../asked-number.ts';
import { optionText, type Request } from '../command.ts';
import type { Io } from '../io.ts';
import { notAmong } from '../not-among.ts';
import { openShow } from '../open-show.ts';

/** The option that names the tuning to bring an instrument to. */
export const TO_OPTION = {
	to: { value: 'TUNING', words: COMMAND_WORDS.tuning.options.to },
};

/** The show and its instrument that the two words of a request name: by id, else by slot or name. */
export async function askedInstrument(
	request: Request,
	io: Io,
): Promise<Asked<{ readonly show: Show; readonly instrument: Instrument }>> {
	const [file = '', word = ''] = request.words;
	const { show, problems } = await openShow(file, request, io);
	if (!show) return { ok: false, problems };
	const named = instrumentNamed(show, word);
	if (!named.ok) return named;
	const instrument = show.instruments.find(({ id }) => id === named.value);
	if (instrument === undefined) throw new RangeError(`no instrument ${named.value}`);
	return { ok: true, value: { show, instrument } };
}

/** The id of the instrument that a word names: by id, else by slot or name. */
export function instrumentNamed({ instruments }: Show, word: string): Asked<string> {
	const key = word.toLowerCase();
	const instrument =
		instruments.find(({ id }) => id === word) ??
		instruments.find(({ id, slot, name }) =>
			[id.toLowerCase(), slot, name.toLowerCase()].includes(key),
		);
	if (instrument) return { ok: true, value: instrument.id };
	const unknown = { code: 'unknown-instrument', what: NO_INSTRUMENT, found: word };
	const ids = instruments.map(({ id }) => id);
	return { ok: false, problems: [{ expected: AN_INSTRUMENT, ...notAmong(unknown, ids) }] };
}

/** The tuning of an option on this instrument; its own when the option is not given. */
export function askedTuning(
	request: Request,
	name: string,
	{ show, instrument }: { readonly show: Show; readonly instrument: Instrument },
): Asked<Tuning> {
	const text = optionText(request, name);
	if (text === null) return { ok: true, value: instrument.tuning };
	const reading = readTuning(text, instrument.kind, show.abbreviations);
	if (reading.ok) return { ok: true, value: reading.tuning };
	const expected = tuningExpectedWords(reading.unread);
	const hint = tuningHintWords(reading.unread);
	const what = notATuning(name, instrument.kind);
	const problem = { code: 'unknown-tuning', what, found: cleanText(text), expected };
	return { ok: false, problems: [hint === null ? problem : { ...problem, hint }] };
}
