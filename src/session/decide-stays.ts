// Commands about who stays on what they have: as the plan has it, or as the technician says.

import type { Entry } from '../journal/entry.ts';
import type { Staying } from './command.ts';
import type { Session } from './session.ts';
import { openFromPoint } from './settled.ts';

/** One entry for each who has that in hands and was not said to stay yet. */
export function stayEntries(
	session: Session,
	stays: readonly Staying[],
	atMs: number,
): readonly Entry[] {
	return stays
		.filter(({ player, instrument }) => session.players[player]?.holds === instrument)
		.filter(({ item, player }) => openFromPoint(session, item, player) === 0)
		.map(
			({ item, player, instrument, capo }): Entry => ({
				k: 'stayed',
				at: atMs,
				item,
				player,
				instrument,
				capo,
			}),
		);
}
