// The packs that are not to be trusted: who wears one, and who keeps another on because of it.

import { findInstrument } from './find.ts';
import type { Session } from './session.ts';

/** What a player wears once this instrument is in their hands: its own pack, but never a suspect one. */
export function packAfter(session: Session, player: string, instrument: string): string | null {
	const own = findInstrument(session, instrument)?.pack ?? null;
	const worn = session.players[player]?.pack ?? null;
	return own === null || session.suspectPacks.includes(own) ? worn : own;
}

export type SuspectPack = {
	readonly pack: string;
	readonly player: string;
	/** What the player has in hands, where its pack is the suspect one and was not put on; null where they wear it. */
	readonly instrument: string | null;
	/** What they wear. */
	readonly worn: string | null;
};

/** Each suspect pack that a player wears, or would wear for what is in their hands, by player in the show's order. */
export function suspectPacksNow(session: Session): readonly SuspectPack[] {
	const { show, players, suspectPacks } = session;
	return show.players.flatMap(({ id: player }): readonly SuspectPack[] => {
		const { holds = null, pack: worn = null } = players[player] ?? {};
		const own = holds === null ? null : (findInstrument(session, holds)?.pack ?? null);
		const isSuspect = (pack: string | null) => pack !== null && suspectPacks.includes(pack);
		return [
			...(worn !== null && isSuspect(worn) ? [{ pack: worn, player, instrument: null, worn }] : []),
			...(own !== null && own !== worn && isSuspect(own)
				? [{ pack: own, player, instrument: holds, worn }]
				: []),
		];
	});
}
