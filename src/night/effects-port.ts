// What is now to be so outside, told to whoever switches it (pedals by wire, other laptops): the whole state,
// never a toggle, so that one that was missed is healed by the next. Nothing in a night waits for it.

import { cueIndex } from '../../machines/song.ts';
import type { RecordId } from '../journal/record.ts';
import { findSongItem } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import type { PedalState } from '../showfile/show.ts';

export type Outside = {
	/** The song that is on, and the cue point it is at, from 0; null between songs. */
	readonly song: { readonly id: string; readonly cue: number } | null;
	/** Every pedal that is believed to switch, by player, then pedal. */
	readonly boards: Readonly<Record<string, Readonly<Record<string, PedalState>>>>;
	/** The pack that each player wears; null for none. */
	readonly packs: Readonly<Record<string, string | null>>;
};

export type EffectsPort = {
	/**
	 * From this record on it is to be so. Returns at once and throws nothing: what goes wrong outside is for the
	 * port to say, by a command of its own.
	 */
	readonly become: (outside: Outside, since: RecordId | null) => void;
};

/** What is to be so outside as things stand. A stuck pedal is left out: it does not switch. */
export function outsideOf(session: Session): Outside {
	const item = session.song === null ? null : findSongItem(session, session.current);
	return {
		song:
			item === null || session.song === null
				? null
				: { id: item.song, cue: cueIndex(session.song) },
		boards: Object.fromEntries(
			Object.entries(session.boards).map(([player, { context }]) => [
				player,
				Object.fromEntries(
					Object.entries(context.pedals).filter(([pedal]) => !context.stuck.includes(pedal)),
				),
			]),
		),
		packs: Object.fromEntries(
			Object.entries(session.players).map(([player, { pack }]) => [player, pack]),
		),
	};
}
