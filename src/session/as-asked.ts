// Whether what a player holds is exactly what the file asks for, whatever it sounds like: for the record.
// What is wrong to the ear, and so has to be told at once, the plan's warnings say.

import { cueIndex } from '../../machines/song.ts';
import type { Part } from '../showfile/show.ts';
import { soundsLike } from '../tuning/capo.ts';
import { cellAt } from './cells.ts';
import { findInstrument, findSong, findSongItem, itemConcerned } from './find.ts';
import type { Session } from './session.ts';
import { soundsSo } from './sounds-so.ts';

/** What a song asks of a player; not named in it, they are asked what stands above it, as long as it sounds so. */
export type PartNow = { readonly part: Part; readonly isNamed: boolean; readonly title: string };

/** The part of the song on now, at its present point, or of the next song at its start; null when they keep what they have. */
export function partNow(session: Session, player: string): PartNow | null {
	const item = findSongItem(session, itemConcerned(session));
	const song = item && findSong(session, item.song);
	if (!song) return null;
	const point = session.phase.value === 'song' && session.song ? cueIndex(session.song) : 0;
	const { part, isNamed } = cellAt(session, { item, point, player });
	return part && { part, isNamed, title: song.title };
}

/** True also where nothing is asked for, or nothing is held. */
export function isAsAsked(session: Session, player: string): boolean {
	const holds = session.players[player]?.holds ?? null;
	const now = partNow(session, player);
	const held = holds === null ? null : findInstrument(session, holds);
	const state = holds === null ? undefined : session.instruments[holds];
	if (!held || !state || now === null) return true;
	const { part, isNamed } = now;
	const { tuning, capo } = state.context;
	if (part.kind === 'none') return false;
	if (part.kind === 'needs') {
		return held.kind === part.instrumentKind && soundsLike(tuning, capo, part.sounds);
	}
	if (!isNamed && soundsSo(session.show, { instrument: held, state }, part)) return true;
	const asked = part.tuning ?? findInstrument(session, part.instrument)?.tuning ?? tuning;
	return (
		part.instrument === holds &&
		asked.notes.join(' ') === tuning.notes.join(' ') &&
		part.capo === capo
	);
}
