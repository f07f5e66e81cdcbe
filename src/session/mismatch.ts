// Whether what a player holds is what the song wants of them, in words for the moment it is noticed.

import { cueIndex, cuePoints } from '../../machines/song.ts';
import type { Part } from '../showfile/show.ts';
import { playerName } from '../showfile/shown-names.ts';
import { soundsLike } from '../tuning/capo.ts';
import { findInstrument, findSong, findSongItem, itemConcerned } from './find.ts';
import type { Session } from './session.ts';

/** The part of the song on now, at its present point, or of the next song at its start; null when they keep what they have. */
export function partNow(session: Session, player: string): { part: Part; title: string } | null {
	const item = findSongItem(session, itemConcerned(session));
	const song = item && findSong(session, item.song);
	if (!song) return null;
	const index = session.phase.value === 'song' && session.song ? (cueIndex(session.song) ?? 0) : 0;
	const part = cuePoints(song)[index]?.parts[player];
	return part ? { part, title: song.title } : null;
}

function capoWords(capo: number): string {
	return capo === 0 ? '' : `, capo ${capo}`;
}

/** One sentence when what the player holds is not what the song wants; null when it will do or hands are empty. */
export function mismatch(session: Session, player: string): string | null {
	const holds = session.players[player]?.holds ?? null;
	const wanted = partNow(session, player);
	const held = holds === null ? null : findInstrument(session, holds);
	const state = holds === null ? undefined : session.instruments[holds];
	if (!held || !state || wanted === null) return null;
	const { part, title } = wanted;
	const { tuning, capo } = state.context;
	const isIn = `${held.name} is in ${tuning.name}${capoWords(capo)}`;
	const who = playerName(session.show, player);
	if (part.kind === 'none') return `${who} has ${held.name}; ${title} wants empty hands.`;
	if (part.kind === 'needs') {
		return held.kind === part.instrumentKind && soundsLike(tuning, capo, part.sounds)
			? null
			: `${isIn}; ${title} wants ${part.sounds.name}.`;
	}
	const asked = findInstrument(session, part.instrument);
	const askedTuning = part.tuning ?? asked?.tuning ?? tuning;
	const isRight =
		part.instrument === holds &&
		askedTuning.notes.join(' ') === tuning.notes.join(' ') &&
		part.capo === capo;
	const thing = part.instrument === holds ? '' : `${asked?.name ?? part.instrument} in `;
	return isRight
		? null
		: `${isIn}; ${title} wants ${thing}${askedTuning.name}${capoWords(part.capo)}.`;
}
