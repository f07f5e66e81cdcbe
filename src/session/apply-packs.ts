// What entries about wireless packs do: another one put on, one in doubt, one cleared.

import type { Entry } from '../journal/entry.ts';
import { changePlayer } from './move-parts.ts';
import type { Session } from './session.ts';

/** The session with another pack on a player, which the desk may have to be told of. */
export function changePack(
	session: Session,
	{ at, player, pack }: Extract<Entry, { k: 'pack-changed' }>,
): Session {
	const from = session.players[player]?.pack ?? null;
	const changed = changePlayer(session, player, { pack, packSinceMs: at });
	return changed === session ? session : { ...changed, packChange: { player, from, to: pack } };
}

/** The session with this pack not to be trusted. */
export function suspectPack(session: Session, pack: string): Session {
	return session.suspectPacks.includes(pack)
		? session
		: { ...session, suspectPacks: [...session.suspectPacks, pack] };
}

/** The session with this pack to be trusted again. */
export function clearPack(session: Session, pack: string): Session {
	return session.suspectPacks.includes(pack)
		? { ...session, suspectPacks: session.suspectPacks.filter((one) => one !== pack) }
		: session;
}
