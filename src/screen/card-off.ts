// What comes out of a player's hands when something is handed to them, and where it goes; on a card of what is to be put
// right first in the song that is on, what they get next: a step records it although the card is about something else.

import type { Work } from '../plan/plan.ts';
import { openBreakOf } from '../session/find.ts';
import { playerName, shownInstrument } from '../showfile/shown-names.ts';
import { HANDS_EMPTY, inTuning, OFF, offWithin, offWords } from '../words/stage.ts';
import { shortTuning } from '../words/tuning-names.ts';
import { momentOf } from './coming-words.ts';
import { instrumentOf, slotLabel } from './named-in-show.ts';
import { cutRow, type Row, rowWidth, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import type { Coming } from './what-comes.ts';
import { workWords } from './work-words.ts';

/** What comes off, in words, and the next work on it; or what is handed next. */
export type Off = {
	/** `off: ` or `next: `. */
	readonly label: string;
	/** `1 Amber to slot 1`, `1 Amber to Bo`, `1 Amber to the bench`; `6 Sedge, drop D`, `hands empty`. */
	readonly words: string;
	/** The same without its name: `1 to the bench`; `6, drop D`. */
	readonly short: string;
	/** Its slot alone: `1`; `hands empty`. */
	readonly least: string;
	/** The next work on it once it is back; null where there is none. */
	readonly next: Work | null;
};

/** Null where neither is: empty hands, or the same instrument again. */
export function offOf(state: ScreenState, coming: Coming, work: readonly Work[]): Off | null {
	const { session, plan } = state;
	const { player, kind, instrument } = coming;
	if (kind === 'stays' || kind === 'wrong') return nextOf(state, coming);
	if (kind === 'keeps') return null;
	// Where there is nothing to take, what broke is played on.
	if ((kind === 'break' || kind === 'missing') && instrument === null) return null;
	const held = session.players[player]?.holds ?? null;
	if (held === null || held === instrument) return null;
	const { show } = session;
	const name = shownInstrument(show, held);
	const other = plan.handOvers.find(
		({ section, instrument: given, player: whose }) =>
			given === held && whose !== player && momentOf(section) === coming.moment,
	);
	const to = (where: string) => ({
		label: OFF.label,
		words: offWords(name, where),
		short: offWords(slotLabel(show, held), where),
		least: slotLabel(show, held),
	});
	if (other) return { ...to(playerName(show, other.player)), next: null };
	const slot = instrumentOf(show, held)?.slot ?? null;
	const isBroken =
		openBreakOf(session, player) !== null ||
		(session.instruments[held]?.context.stringsDown.length ?? 0) > 0;
	const where = isBroken ? OFF.bench : slot === null ? OFF.rack : OFF.slot(slot.toUpperCase());
	return { ...to(where), next: work.find((one) => one.instrument === held) ?? null };
}

/** What the next step hands a player while something else is still to be done in the song that is on. */
function nextOf({ session, plan }: ScreenState, { player, moment }: Coming): Off | null {
	const isOn = plan.sections.some((one) => one.hasBegun && momentOf(one) === moment);
	const next = plan.sections.find(({ hasBegun }) => !hasBegun);
	const planned = plan.handOvers.find((one) => one.player === player && one.section === next);
	// What comes later still is for its own card: here it would be handed too soon.
	if (!isOn || planned === undefined) return null;
	const { instrument, tuning, capo } = planned;
	const said = (words: string, short: string, least: string): Off => ({
		...{ label: OFF.next, words, short, least },
		next: null,
	});
	if (instrument === null) return said(HANDS_EMPTY, HANDS_EMPTY, HANDS_EMPTY);
	const { show } = session;
	const slot = slotLabel(show, instrument);
	const name = shownInstrument(show, instrument);
	const sound = tuning === null ? '' : shortTuning(show, tuning);
	return said(inTuning(name, sound, capo), inTuning(slot, sound, capo), slot);
}

/** As much of it as fits, the whole first: `off 1 Amber to slot 1, then RETUNE drop D, start within  12:30`. */
export function offTexts(state: ScreenState, { words, next }: Off): readonly string[] {
	if (next === null) return [words];
	const [job = ''] = workWords(state, next);
	const seconds = Math.max(0, Math.trunc((next.beginByMs - state.nowMs) / 1000));
	return offWithin(words, job, seconds);
}

/** One row that says it; blank where there is nothing. */
export function offRow(
	state: ScreenState,
	{ off }: { readonly off: Off | null },
	columns: number,
): Row {
	if (off === null) return [];
	const rows = offTexts(state, off).map((words): Row => [span(off.label, 'title'), span(words)]);
	return rows.find((row) => rowWidth(row) <= columns) ?? cutRow(rows.at(-1) ?? [], columns);
}
