// Who wears which wireless pack, and those that two players wear at once: only one of them can be heard.

import type { Player } from '../showfile/show.ts';
import { packName, playerName } from '../showfile/shown-names.ts';
import type { Session } from './session.ts';

/** The players who have this pack on, in the show's order; whether they hold an instrument or not. */
export function wearersOf({ show, players }: Session, pack: string): readonly Player[] {
	return show.players.filter(({ id }) => players[id]?.pack === pack);
}

/** One sentence, without its full stop, for each pack that several players who hold something wear; in the order of the show's packs. */
export function sharedPacks(session: Session): readonly { pack: string; words: string }[] {
	return session.show.packs.flatMap(({ id }) => {
		const names = wearersOf(session, id)
			.filter((player) => session.players[player.id]?.holds)
			.map((player) => playerName(session.show, player.id));
		if (names.length < 2) return [];
		const are = names.length === 2 ? 'are both' : 'are all';
		return [
			{ pack: id, words: `${names.join(' and ')} ${are} on pack ${packName(session.show, id)}` },
		];
	});
}
