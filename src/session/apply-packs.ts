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

/** The session after a step with how long each pack has been worn: one that was put on counts from then on. */
export function timePacks(before: Session, after: Session, atMs: number): Session {
	if (before.players === after.players) return after;
	const wornIn = ({ players }: Session) => Object.values(players).map(({ pack }) => pack);
	const [was, is] = [wornIn(before), wornIn(after)];
	const changed = after.show.packs.filter(({ id }) => was.includes(id) !== is.includes(id));
	if (changed.length === 0) return after;
	const times = changed.map(({ id }) => {
		const { wornMs, sinceMs } = before.packTimes[id] ?? { wornMs: 0, sinceMs: null };
		return [
			id,
			is.includes(id)
				? { wornMs, sinceMs: atMs }
				: { wornMs: wornMs + (sinceMs === null ? 0 : atMs - sinceMs), sinceMs: null },
		] as const;
	});
	return { ...after, packTimes: { ...before.packTimes, ...Object.fromEntries(times) } };
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
