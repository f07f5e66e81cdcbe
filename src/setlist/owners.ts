// The players of a list with what their column and the rack tell of them.

import type { InstrumentKind } from '../tuning/kind.ts';
import { kindIn } from './guess-kind.ts';
import type { Rack } from './list-reading.ts';
import type { ListPlayer, SetList } from './list-row.ts';

export type Owner = {
	readonly player: ListPlayer;
	readonly kind: InstrumentKind;
	/** Whether any cell of theirs names an instrument, or the rack has one of theirs. */
	hasNames: boolean;
};

/** By the player's id. */
export function ownersOf({ players }: SetList, rack: Rack): ReadonlyMap<string, Owner> {
	return new Map(
		players.map((player) => {
			const theirs = rack.instruments.filter((one) => one.for?.includes(player.id));
			const plays = rack.players.find(({ id }) => id === player.id)?.plays ?? '';
			const said = kindIn(plays) ?? kindIn(player.column) ?? kindIn(player.group ?? '');
			const kind = theirs[0]?.kind ?? said ?? 'electric-6';
			return [player.id, { player, kind, hasNames: theirs.length > 0 }];
		}),
	);
}
