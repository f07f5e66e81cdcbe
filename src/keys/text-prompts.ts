// The prompts that ask for words: memo, incident, the log's narrowing, tuning or capo as it is.

import { wrapWords } from '../base/wrap-words.ts';
import { SOUGHT_KINDS } from '../session/decide-faults.ts';
import { warmedRack } from '../session/warmth.ts';
import type { Instrument, Show } from '../showfile/show.ts';
import { shownInstrument } from '../showfile/shown-names.ts';
import { CAPO_HIGHEST } from '../tuning/capo.ts';
import { KINDS } from '../tuning/kind.ts';
import { readTuning } from '../tuning/tuning.ts';
import { capoSaid } from '../words/capo-words.ts';
import { incidentCautions } from '../words/cautions.ts';
import { faultHint } from '../words/fault.ts';
import { INCIDENT_KINDS } from '../words/incident-kinds.ts';
import { LINE_COLUMNS } from '../words/line-columns.ts';
import {
	actualTitle,
	CAPO_TOO_HIGH,
	CELSIUS_RANGE,
	CHECK_RACK_TITLE,
	incidentTitle,
	MEMO_TITLE,
	noSuchTuning,
	SEARCH_HINT,
	SEARCH_TITLE,
	takesNoCapo,
} from '../words/questions.ts';
import { tuningExpectedWords } from '../words/unread-tuning.ts';
import { driftWords } from '../words/warmth.ts';
import type { KeyContext, Prompt } from './key-context.ts';
import { rangIn, rangLines } from './ringing-prompt.ts';
import { textPrompt, withDraft } from './text-field.ts';
import { lineOf } from './text-line.ts';

/** A memo in free words. */
export function memoPrompt(context: KeyContext): Prompt {
	return withDraft(
		{
			draft: 'memo',
			view: () => ({ title: MEMO_TITLE }),
			enter: (text) => ({ kind: 'command', command: { do: 'write-memo', words: text } }),
		},
		context,
	);
}

/** The words that the log is narrowed to; none shows all of it. */
export function narrowPrompt({ narrowedTo }: KeyContext): Prompt {
	return textPrompt(
		{
			view: () => ({
				title: SEARCH_TITLE,
				lines: [SEARCH_HINT],
			}),
			enter: (text) => ({ kind: 'narrow', words: text.trim() }),
		},
		lineOf(narrowedTo),
	);
}

/**
 * Reads "3", "3 b", "b at the saddle", "battery": a digit is the string, a letter standing alone or the
 * whole of a kind's word is the kind, the rest words.
 */
export function readIncidentText(text: string): {
	string: number | null;
	kind: string | null;
	words: string;
} {
	const [, digit, afterDigit = ''] = /^\s*(\d)?\s*(.*)$/s.exec(text) ?? [];
	const [, first = '', afterFirst = ''] = /^(\p{L}+)(?:\s+(.*))?$/su.exec(afterDigit) ?? [];
	const named = first.toLowerCase();
	const kind =
		INCIDENT_KINDS.find(({ letter, words }) => letter === named || words === named)?.kind ?? null;
	return {
		string: digit === undefined ? null : Number(digit),
		kind,
		words: (kind === null ? afterDigit : afterFirst).trim(),
	};
}

/** On lines that even a small screen has room for. */
const KINDS_A_LINE = 5;

/** Every kind with its letter; the one that the text names so far in capitals. */
function kindLines(text: string): readonly string[] {
	const named = readIncidentText(text).kind;
	const kinds = INCIDENT_KINDS.map(
		({ letter, kind, words }) => `${letter} ${kind === named ? words.toUpperCase() : words}`,
	);
	return Array.from({ length: Math.ceil(kinds.length / KINDS_A_LINE) }, (_, line) =>
		kinds.slice(line * KINDS_A_LINE, (line + 1) * KINDS_A_LINE).join('   '),
	);
}

/** What to mind with what the text names so far. */
function cautionLines(text: string): readonly string[] {
	const { kind, words } = readIncidentText(text);
	return incidentCautions([kind ?? '', words].join(' '));
}

/** More about the last incident. */
export function describePrompt(context: KeyContext): Prompt {
	const last = context.session.incidents.at(-1)?.id ?? '';
	return withDraft(
		{
			draft: `incident ${last}`,
			view: (text, now) => {
				const rang = rangIn(text, now);
				return {
					title: incidentTitle(context.session.incidents.length),
					// What to do takes the place of what else it could be.
					lines: rang === null ? [...kindLines(text), ...cautionLines(text)] : rangLines(rang, now),
				};
			},
			enter: (text, now) => {
				const rang = rangIn(text, now);
				const described = readIncidentText(text);
				const isSought = described.kind !== null && SOUGHT_KINDS.has(described.kind);
				return {
					kind: 'command',
					command: { do: 'describe-incident', ...described },
					...(isSought ? { says: faultHint(context.keyOf('seek-fault')) } : {}),
					...(rang !== null && { keeps: rang }),
				};
			},
		},
		context,
	);
}

/** The tuning or capo of an instrument as it really is: a fret, or a tuning's name or notes. */
export function asItIsPrompt(instrument: Instrument): Prompt {
	return textPrompt({
		view: (_text, { session }) => {
			const state = session.instruments[instrument.id];
			return {
				title: actualTitle(
					shownInstrument(session.show, instrument.id),
					state?.context.tuning.name ?? instrument.tuning.name,
					capoSaid(state?.context.capo ?? 0),
				),
			};
		},
		enter: (text, { session }) => {
			const correct = { do: 'correct-instrument', instrument: instrument.id } as const;
			const { name, fret } = tuningAndFret(text.trim(), instrument, session.show);
			const shown = shownInstrument(session.show, instrument.id);
			if (fret !== null && fret > 0 && !KINDS[instrument.kind].canTakeCapo) {
				return { kind: 'say', words: takesNoCapo(shown) };
			}
			if (fret !== null && fret > CAPO_HIGHEST + 5) return { kind: 'say', words: CAPO_TOO_HIGH };
			if (name === null) {
				return { kind: 'command', command: { ...correct, tuning: null, capo: fret } };
			}
			const reading = readTuning(name, instrument.kind, session.show.abbreviations);
			return reading.ok
				? { kind: 'command', command: { ...correct, tuning: reading.tuning, capo: fret } }
				: { kind: 'say', words: noSuchTuning(name, shown, tuningExpectedWords(reading.unread)) };
		},
	});
}

/** What was typed of each, null for nothing: `2`, `drop D`, `drop D 2`, `drop D, capo 2`. */
function tuningAndFret(typed: string, { kind }: Instrument, { abbreviations }: Show) {
	const [, before, fret] = /^(?:(.*\S)\s+)?(\d{1,2})$/.exec(typed) ?? [];
	// A tuning may be called by what ends in a number.
	if (fret === undefined || (before !== undefined && readTuning(typed, kind, abbreviations).ok)) {
		return { name: typed, fret: null };
	}
	const name = before?.replace(/[\s,]*\bcapo$/i, '').replace(/,$/, '') ?? '';
	return { name: name === '' ? null : name, fret: Number(fret) };
}

function celsiusOf(text: string): number | null {
	return text === '' ? null : Number(text.replace(',', '.'));
}

/** Everything is to be checked again; the stage's temperature if wished. */
export function doubtAllPrompt(): Prompt {
	return textPrompt({
		isText: false,
		accepts: (key) => /[-\d.,]/.test(key),
		view: (text, { session }) => {
			const words = driftWords(session.show, warmedRack(session, celsiusOf(text)));
			return {
				title: CHECK_RACK_TITLE,
				lines: words === null ? [] : wrapWords(words, LINE_COLUMNS),
			};
		},
		enter: (text) => {
			const celsius = celsiusOf(text);
			if (celsius !== null && !(celsius >= -40 && celsius <= 60)) {
				return { kind: 'say', words: CELSIUS_RANGE };
			}
			return { kind: 'command', command: { do: 'doubt-all', celsius } };
		},
	});
}
