// What comes out of a player's hands when something is handed to them, and where it goes.

import type { Work } from '../plan/plan.ts';
import { openBreakOf } from '../session/find.ts';
import { playerName, shownInstrument } from '../showfile/shown-names.ts';
import { OFF, offWithin, offWords } from '../words/stage.ts';
import { instrumentOf, slotLabel } from './named-in-show.ts';
import { cutRow, type Row, rowWidth, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import type { Coming } from './what-comes.ts';
import { workWords } from './work-words.ts';

/** What comes off, in words, and the next work on it. */
export type Off = {
	readonly instrument: string;
	/** `1 Amber to slot 1`, `1 Amber to Bo`, `1 Amber to the bench`. */
	readonly words: string;
	/** The same without its name: `1 to the bench`. */
	readonly short: string;
	/** The next work on it once it is back; null where there is none. */
	readonly next: Work | null;
};

/** Null where nothing comes off: empty hands, or the same instrument again. */
export function offOf(state: ScreenState, coming: Coming, work: readonly Work[]): Off | null {
	const { session, plan } = state;
	const { player, kind, instrument } = coming;
	if (kind === 'keeps' || kind === 'stays') return null;
	// Where there is nothing to take, what broke is played on.
	if ((kind === 'break' || kind === 'missing') && instrument === null) return null;
	const held = session.players[player]?.holds ?? null;
	if (held === null || held === instrument) return null;
	const { show } = session;
	const name = shownInstrument(show, held);
	const other = plan.handOvers.find(
		({ section, instrument: given, player: whose }) =>
			given === held && whose !== player && `${section.item}.${section.point}` === coming.moment,
	);
	const to = (where: string) => ({
		instrument: held,
		words: offWords(name, where),
		short: offWords(slotLabel(show, held), where),
	});
	if (other) return { ...to(playerName(show, other.player)), next: null };
	const slot = instrumentOf(show, held)?.slot ?? null;
	const isBroken =
		openBreakOf(session, player) !== null ||
		(session.instruments[held]?.context.stringsDown.length ?? 0) > 0;
	const where = isBroken ? OFF.bench : slot === null ? OFF.rack : OFF.slot(slot.toUpperCase());
	return { ...to(where), next: work.find((one) => one.instrument === held) ?? null };
}

/** As much of it as fits, the whole first: `off 1 Amber to slot 1, then RETUNE drop D, start within  12:30`. */
export function offTexts(state: ScreenState, { words, next }: Off): readonly string[] {
	if (next === null) return [words];
	const [job = ''] = workWords(state, next);
	const seconds = Math.max(0, Math.trunc((next.beginByMs - state.nowMs) / 1000));
	return offWithin(words, job, seconds);
}

/** One row that says it; blank where nothing comes off. */
export function offRow(
	state: ScreenState,
	{ off }: { readonly off: Off | null },
	columns: number,
): Row {
	if (off === null) return [];
	const rows = offTexts(state, off).map((words): Row => [span(OFF.label, 'title'), span(words)]);
	return rows.find((row) => rowWidth(row) <= columns) ?? cutRow(rows.at(-1) ?? [], columns);
}
