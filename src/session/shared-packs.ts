// Who wears which wireless pack, those that two players wear at once, of whom only one can be heard, who wears the
// other's, and who has none on although a pack belongs to what they hold.

import type { Player } from '../showfile/show.ts';
import type { Session } from './session.ts';
import { packFor } from './suspect-packs.ts';

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

/** Each two players of whom each wears the pack that belongs to what the other holds, in the show's order: both are heard, as one another. */
export function crossedPacks(
	session: Session,
): readonly { players: readonly [string, string]; packs: readonly [string, string] }[] {
	const { show, players } = session;
	const playing = show.players.flatMap(({ id: player }) => {
		const { holds = null, pack: worn = null } = players[player] ?? {};
		const own = holds === null ? null : packFor(session, player, holds);
		return worn === null || own === null || own === worn ? [] : [{ player, own, worn }];
	});
	return playing.flatMap((one, at) =>
		playing
			.slice(at + 1)
			.filter((other) => other.own === one.worn && other.worn === one.own)
			.map((other) => ({
				players: [one.player, other.player] as const,
				packs: [one.worn, other.worn] as const,
			})),
	);
}

export type Unheard = {
	readonly player: string;
	readonly instrument: string;
	/** The pack that belongs on with it. */
	readonly pack: string;
	/** Who plays on that; null where nobody does. */
	readonly wearer: string | null;
};

/** Who has no pack on, in the show's order; a suspect one that was left off is said elsewhere. */
export function withoutPack(session: Session): readonly Unheard[] {
	return session.show.players.flatMap(({ id: player }): readonly Unheard[] => {
		const { holds = null, pack: worn = null } = session.players[player] ?? {};
		const pack = holds === null || worn !== null ? null : packFor(session, player, holds);
		if (holds === null || pack === null || session.suspectPacks.includes(pack)) return [];
		const wearer = wearersOf(session, pack).find(({ id }) => session.players[id]?.holds);
		return [{ player, instrument: holds, pack, wearer: wearer?.id ?? null }];
	});
}
