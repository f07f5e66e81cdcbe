// Who wears which wireless pack, and those that two players wear at once: only one of them can be heard.

import type { Player } from '../showfile/show.ts';
import type { Session } from './session.ts';

/** The players who have this pack on, in the show's order; whether they hold an instrument or not. */
export function wearersOf({ show, players }: Session, pack: string): readonly Player[] {
	return show.players.filter(({ id }) => players[id]?.pack === pack);
}

/** Each pack that several players who hold something wear, in the order of the show's packs, with those players. */
export function sharedPacks(
	session: Session,
): readonly { pack: string; players: readonly string[] }[] {
	return session.show.packs.flatMap(({ id }) => {
		const players = wearersOf(session, id)
			.map((player) => player.id)
			.filter((player) => session.players[player]?.holds);
		return players.length < 2 ? [] : [{ pack: id, players }];
	});
}
