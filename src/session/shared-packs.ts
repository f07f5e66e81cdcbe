// Wireless packs that two players wear at once: only one of them can be heard.

import { playerName } from '../showfile/shown-names.ts';
import type { Session } from './session.ts';

/** One sentence, without its full stop, for each pack that several players who hold something wear; in the order of the show's packs. */
export function sharedPacks(session: Session): readonly { pack: string; words: string }[] {
	return session.show.packs.flatMap(({ id }) => {
		const names = session.show.players
			.filter((player) => {
				const { holds, pack } = session.players[player.id] ?? { holds: null, pack: null };
				return holds !== null && pack === id;
			})
			.map((player) => playerName(session.show, player.id));
		if (names.length < 2) return [];
		const are = names.length === 2 ? 'are both' : 'are all';
		return [{ pack: id, words: `${names.join(' and ')} ${are} on pack ${id}` }];
	});
}
