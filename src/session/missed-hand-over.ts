// What a player was to have been given for a song that was left without it being recorded, while what
// comes after asks nothing of them. Nothing is open any more then; it is not to be forgotten.

import type { NightMs } from '../journal/entry.ts';
import { type Cell, cellAt } from './cells.ts';
import { findInstrument, nextSongItem, songOnNow } from './find.ts';
import type { Run, Session, SongItem } from './session.ts';
import { soundsSo } from './sounds-so.ts';

export type MissedHandOver = {
	/** The song that it was for; its id. */
	readonly song: string;
	/** When that song began. */
	readonly beganAtMs: NightMs;
	/** Null where the file leaves the choice open. */
	readonly instrument: string | null;
};

/** The hand-over that was missed; null once something was recorded of this player's hands, or is to come. */
export function missedHandOver(session: Session, player: string): MissedHandOver | null {
	const state = session.players[player];
	const runs = runsOf(session);
	const place = runs.findLastIndex(
		({ item, run }) => run.how !== 'skipped' && cellOf(session, item, player).part !== null,
	);
	const asked = runs[place];
	const coming = songOnNow(session)?.item ?? nextSongItem(session);
	if (!state || !asked || !coming || cellOf(session, coming, player).part !== null) return null;
	// What was recorded once the song before had ended was meant for this one, whatever it was.
	const saidMs = Math.max(state.sinceMs ?? -Infinity, state.stayedMs ?? -Infinity);
	const isRecorded =
		saidMs !== -Infinity && (place === 0 || saidMs >= (runs[place - 1]?.run.endedAtMs ?? 0));
	if (isRecorded) return null;
	const { song } = asked.item;
	const { beganAtMs } = asked.run;
	const { part, isNamed } = cellOf(session, asked.item, player);
	const held = state.holds === null ? null : findInstrument(session, state.holds);
	const heldState = held && session.instruments[held.id];
	const isSuch =
		held !== null &&
		heldState != null &&
		part !== null &&
		soundsSo(session.show, { instrument: held, state: heldState }, part);
	if (part === null || part.kind === 'none') return null;
	if (part.kind === 'needs' || !isNamed) {
		const instrument = part.kind === 'named' ? part.instrument : null;
		return isSuch ? null : { song, beganAtMs, instrument };
	}
	const there = session.instruments[part.instrument]?.value;
	const isToBeHad = there === 'racked' || there === 'staged';
	return part.instrument === held?.id || !isToBeHad
		? null
		: { song, beganAtMs, instrument: part.instrument };
}

function cellOf(session: Session, item: SongItem, player: string): Cell {
	return cellAt(session, { item, point: 0, player });
}

/** Every time that a song was on, in order. */
function runsOf({ list }: Session): readonly { readonly item: SongItem; readonly run: Run }[] {
	return list
		.filter((item): item is SongItem => item.kind === 'song')
		.flatMap((item) => item.runs.map((run) => ({ item, run })))
		.sort((one, other) => one.run.beganAtMs - other.run.beganAtMs);
}
