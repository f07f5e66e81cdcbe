// The question of an instrument that rings: which, and at what; what to do is shown while it is typed.

import { wrapWords } from '../base/wrap-words.ts';
import { ringingLines, ringsAt } from '../bench/ringing.ts';
import type { Session } from '../session/session.ts';
import type { Instrument } from '../showfile/show.ts';
import { shownInstrument } from '../showfile/shown-names.ts';
import { hasRingingBody, readRinging } from '../tuning/ringing.ts';
import { FEEDBACK_TITLES, notRinging, ringMemo, ringsTitle } from '../words/feedback.ts';
import { LINE_COLUMNS } from '../words/line-columns.ts';
import type { KeyContext, Outcome, Prompt, Rang } from './key-context.ts';
import { slotPrompt } from './prompts.ts';
import { textPrompt } from './text-field.ts';

/** Which instrument, unless only one is in hands. */
export function ringsAsked({ session }: KeyContext): Outcome {
	const [only, ...more] = heldNow(session);
	const ask = (one: Instrument): Outcome => ({ kind: 'prompt', prompt: ringsPrompt(one) });
	return only !== undefined && more.length === 0
		? ask(only)
		: { kind: 'prompt', prompt: slotPrompt(FEEDBACK_TITLES.which, ask) };
}

function heldNow({ show, players }: Session): readonly Instrument[] {
	const held = Object.values(players).flatMap(({ holds }) => holds ?? []);
	return show.instruments.filter(({ id }) => held.includes(id));
}

/** `feedback 147`, `rings at D3`. */
const RINGING = /\b(?:feedback|rings?|ringing|howl\w*)\s+(?:at\s+)?(\S+(?:\s*hz)?)/i;

/** What the words for the last incident say rings, and at what; null where they name neither, or several could be meant. */
export function rangIn(text: string, { session }: KeyContext): Rang | null {
	const [, typed = ''] = RINGING.exec(text) ?? [];
	const hertz = readRinging(typed, session.show.referenceHertz);
	if (hertz === null) return null;
	const held = heldNow(session);
	const bodies = held.filter(({ kind }) => hasRingingBody(kind));
	const among = bodies.length > 0 ? bodies : held;
	const known = session.incidents.at(-1)?.instrument ?? null;
	const instrument = known ?? (among.length === 1 ? (among[0]?.id ?? null) : null);
	return instrument === null ? null : { instrument, hertz };
}

/** What to do about it. */
export function rangLines(
	{ instrument: id, hertz }: Rang,
	{ session }: KeyContext,
): readonly string[] {
	const { show } = session;
	const instrument = show.instruments.find((one) => one.id === id);
	if (instrument === undefined) return [];
	const tuning = session.instruments[id]?.context.tuning ?? instrument.tuning;
	const { referenceHertz } = show;
	return [
		shownInstrument(show, id),
		...ringingLines({ hertz, instrument, referenceHertz, tuning }),
	].flatMap((line) => wrapWords(line, LINE_COLUMNS));
}

function ringsPrompt(instrument: Instrument): Prompt {
	return textPrompt({
		view: (text, now) => {
			const { show } = now.session;
			const hertz = readRinging(text, show.referenceHertz);
			return {
				title: ringsTitle(shownInstrument(show, instrument.id)),
				lines:
					hertz === null
						? [FEEDBACK_TITLES.hint]
						: rangLines({ instrument: instrument.id, hertz }, now).slice(1),
			};
		},
		enter: (text, { session }) => {
			const { show } = session;
			const hertz = readRinging(text, show.referenceHertz);
			if (hertz === null) return { kind: 'say', words: notRinging(text.trim()) };
			const at = ringsAt({ hertz, referenceHertz: show.referenceHertz });
			return {
				kind: 'command',
				command: { do: 'write-memo', words: ringMemo(shownInstrument(show, instrument.id), at) },
				keeps: { instrument: instrument.id, hertz },
			};
		},
	});
}
