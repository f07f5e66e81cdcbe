// The packs that are not to be trusted: who wears one, and who keeps another on because of it.

import { partNow } from './as-asked.ts';
import { findInstrument } from './find.ts';
import type { Session } from './session.ts';

/** The pack that the file gives an instrument. */
export function ownPack(session: Session, instrument: string | null): string | null {
	return instrument === null ? null : (findInstrument(session, instrument)?.pack ?? null);
}

/** The pack that belongs on a player with this in hands: what the song on or next says for it, else its own. */
export function packFor(session: Session, player: string, instrument: string): string | null {
	const part = partNow(session, player)?.part;
	const isAsked =
		part?.kind === 'needs' || (part?.kind === 'named' && part.instrument === instrument);
	return (isAsked ? part.pack : null) ?? ownPack(session, instrument);
}

/** What a player wears once this pack is to go on: that one, but never a suspect one. */
export function packAfter(session: Session, player: string, pack: string | null): string | null {
	const worn = session.players[player]?.pack ?? null;
	return pack === null || session.suspectPacks.includes(pack) ? worn : pack;
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
		const own = holds === null ? null : packFor(session, player, holds);
		const isSuspect = (pack: string | null) => pack !== null && suspectPacks.includes(pack);
		return [
			...(worn !== null && isSuspect(worn) ? [{ pack: worn, player, instrument: null, worn }] : []),
			...(own !== null && own !== worn && isSuspect(own)
				? [{ pack: own, player, instrument: holds, worn }]
				: []),
		];
	});
}
