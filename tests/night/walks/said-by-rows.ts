// What a night says to people of each player's next hand-over: the state as scripts read it, and the rows.

import type { Entry } from '../../../src/journal/entry.ts';
import type { Night } from '../../../src/night/night.ts';
import type { PlannedHandOver } from '../../../src/plan/plan.ts';
import { type Card, cardOf } from '../../../src/screen/cards.ts';
import { comingHandOvers } from '../../../src/screen/coming.ts';
import { songOnNow } from '../../../src/session/find.ts';
import { midiOf } from '../../../src/tuning/pitch.ts';
import { HANDS_EMPTY, OFF } from '../../../src/words/stage.ts';
import type { Next, Stays } from './told-by-model.ts';

type PlayerJson = {
	readonly next: (Omit<Next, 'open'> & { readonly tuning: string }) | null;
	readonly stays: (Stays & { readonly tuning: string }) | null;
};

export type Said = {
	readonly players: Readonly<Record<string, PlayerJson>>;
	readonly rows: readonly Card[];
	/** Every hand-over of the plan: the rows name each player's first. */
	readonly handOvers: readonly PlannedHandOver[];
	readonly isSongOn: boolean;
};

/** What is said at this moment. */
export function saidBy(night: Night): Said {
	const { players } = night.state() as { players: Said['players'] };
	const { handOvers } = night.plan();
	const isSongOn = songOnNow(night.session()) !== null;
	const screen = night.screen();
	const rows = comingHandOvers(screen).map((one) => cardOf(screen, one, []));
	return { players, rows, handOvers, isSongOn };
}

/** The next hand-over as the state says it, its notes from the plan; null where none is to come. */
export function nextSaid(night: Night, { players }: Said, player: string): Next | null {
	const said = players[player]?.next ?? null;
	const planned = night
		.plan()
		.handOvers.find((one) => one.player === player && one.instrument !== null);
	if (said === null || planned?.tuning == null) return null;
	const { song, instrument, capo } = said;
	const open = planned.tuning.notes.map(midiOf).join(' ');
	return { song, instrument, open, capo, for: said.for };
}

/** What the state says a player stays on. */
export function staysSaid({ players }: Said, player: string): Stays | null {
	const said = players[player]?.stays ?? null;
	if (said === null) return null;
	return { song: said.song, instrument: said.instrument, capo: said.capo, for: said.for };
}

/** Whether one of these said what the entry records of hands; entries about anything else are always said. */
export function isSaid(entry: Entry, before: readonly Said[]): boolean {
	return before.some(({ players, rows, handOvers, isSongOn }) => {
		if (entry.k === 'handed-over' && entry.by === 'plan') {
			const { player, instrument, capo } = entry;
			type Given = { readonly instrument: string | null; readonly capo: number };
			const isIt = (one: Given | null | undefined): boolean =>
				one?.instrument === instrument && (instrument === null || one.capo === capo);
			const row = rows.find((one) => one.player === player);
			if (!isSongOn) return isIt(row);
			const [first, ...later] = handOvers.filter((one) => one.player === player);
			// The row says what to take for what broke in the song that is on, and the plan what the next step reaches.
			const said =
				row?.kind === 'break' ? first : instrument === null ? row : players[player]?.next;
			if (isIt(said)) return true;
			// A card of what is to be put right first says beside it that the hands are emptied next.
			const { label, words } = row?.off ?? {};
			if (instrument === null && label === OFF.next && words === HANDS_EMPTY) return true;
			// The same where it says what is overdue in the song.
			return first?.section.hasBegun === true && later.some(isIt);
		}
		if (entry.k === 'stayed') {
			// For the song that is on the row says it, and the state that of the next song.
			const row = rows.find(({ player }) => player === entry.player);
			return [players[entry.player]?.stays, row?.kind === 'stays' ? row : null].some(
				(one) => one?.instrument === entry.instrument && one.capo === entry.capo,
			);
		}
		if (entry.k === 'found-as') {
			return Object.values(players).some(
				({ stays }) => stays?.instrument === entry.instrument && stays.capo === entry.capo,
			);
		}
		return true;
	});
}
