// What naming another instrument for a player in one song comes to: that one, so that it sounds like what is
// asked there with the least work from how it stands.

import type { TonightPart } from '../journal/entry.ts';
import type { OpenWithCapo } from '../plan/demand/same-pitches.ts';
import { soundingTuning, waysToSound } from '../plan/demand/same-pitches.ts';
import { workNeeded } from '../plan/schedule/work-needed.ts';
import { cellAt } from '../session/cells.ts';
import { findInstrument } from '../session/find.ts';
import type { Session, SongItem } from '../session/session.ts';
import type { Instrument, Part } from '../showfile/show.ts';
import type { Tuning } from '../tuning/tuning.ts';

/** What is asked of the player at the song's start without what was named tonight; null for nothing. */
function askedWithoutTonight(session: Session, item: SongItem, player: string): Part | null {
	const { [player]: _, ...tonight } = item.tonight;
	return cellAt(session, { item: { ...item, tonight }, point: 0, player }).part;
}

/** The part; as it stands where it cannot sound like what is asked, or nothing is. */
export function namedTonight(
	session: Session,
	instrument: Instrument,
	at: { readonly item: SongItem; readonly player: string },
): TonightPart {
	const state = session.instruments[instrument.id];
	const asIs: OpenWithCapo = state?.context ?? { tuning: instrument.tuning, capo: 0 };
	const sounds = soundOf(session, askedWithoutTonight(session, at.item, at.player));
	const ways =
		sounds === null ? [] : waysToSound(instrument, { tuning: sounds, capo: 0 }, asIs.tuning);
	const seconds = (to: OpenWithCapo) =>
		state === undefined ? 0 : workNeeded({ instrument, state, to }).seconds;
	const { tuning, capo } = ways.toSorted((one, other) => seconds(one) - seconds(other))[0] ?? asIs;
	return { kind: 'named', instrument: instrument.id, tuning, capo, leave: null, pack: null };
}

/** What is heard of a part; null for nothing in particular. */
function soundOf(session: Session, part: Part | null): Tuning | null {
	if (part === null || part.kind === 'none') return null;
	if (part.kind === 'needs') return part.sounds;
	const named = findInstrument(session, part.instrument);
	return (
		named && soundingTuning({ tuning: part.tuning ?? named.tuning, capo: part.capo }, named.kind)
	);
}
