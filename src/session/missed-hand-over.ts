// What a player was to have been given for a song that was left without it being recorded, while what
// came after lets them keep what they have. Nothing is open any more then; it is not to be forgotten.

import type { Part } from '../showfile/show.ts';
import { soundsLike } from '../tuning/capo.ts';
import { findInstrument, findSong, nextSongItem, songOnNow } from './find.ts';
import type { Run, Session, SongItem } from './session.ts';

export type MissedHandOver = {
	/** The song that it was for; its id. */
	readonly song: string;
	/** Null where the file leaves the choice open. */
	readonly instrument: string | null;
};

/** The hand-over that was missed; null once something was recorded of this player's hands, or is to come. */
export function missedHandOver(session: Session, player: string): MissedHandOver | null {
	const state = session.players[player];
	const runs = runsOf(session);
	const place = runs.findLastIndex(
		({ item, run }) => run.how !== 'skipped' && partOf(session, item, player) !== undefined,
	);
	const asked = runs[place];
	const coming = songOnNow(session)?.item ?? nextSongItem(session);
	if (!state || !asked || !coming || partOf(session, coming, player)) return null;
	// What was recorded once the song before had ended was meant for this one, whatever it was.
	const isRecorded =
		state.sinceMs !== null &&
		(place === 0 || state.sinceMs >= (runs[place - 1]?.run.endedAtMs ?? 0));
	if (isRecorded) return null;
	const { song } = asked.item;
	const part = partOf(session, asked.item, player);
	const held = state.holds === null ? null : findInstrument(session, state.holds);
	if (part?.kind === 'named') {
		const there = session.instruments[part.instrument]?.value;
		const isToBeHad = there === 'racked' || there === 'staged';
		return part.instrument === held?.id || !isToBeHad
			? null
			: { song, instrument: part.instrument };
	}
	if (part?.kind !== 'needs') return null;
	const context = held && session.instruments[held.id]?.context;
	const isSuch =
		context != null &&
		held?.kind === part.instrumentKind &&
		soundsLike(context.tuning, context.capo, part.sounds);
	return isSuch ? null : { song, instrument: null };
}

function partOf(session: Session, { song }: SongItem, player: string): Part | undefined {
	return findSong(session, song)?.parts[player];
}

/** Every time that a song was on, in order. */
function runsOf({ list }: Session): readonly { readonly item: SongItem; readonly run: Run }[] {
	return list
		.filter((item): item is SongItem => item.kind === 'song')
		.flatMap((item) => item.runs.map((run) => ({ item, run })))
		.sort((one, other) => one.run.beganAtMs - other.run.beganAtMs);
}
