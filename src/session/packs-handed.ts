// Which pack goes on with what is handed: the one that belongs to it, but never off another player who plays on it.

import type { Session } from './session.ts';
import { packFor } from './suspect-packs.ts';

export type HandedWithPack = {
	readonly player: string;
	/** Null: hands are emptied. */
	readonly instrument: string | null;
	/** The pack that belongs on with it; null for whatever is worn. */
	readonly pack: string | null;
};

export type PackHanded = {
	/** What they wear from then on; null for none. */
	readonly worn: string | null;
	/** Who wears the pack that belongs on with it, which is why it does not go on; null where nothing is in the way. */
	readonly wearer: string | null;
};

type Wearing = {
	readonly players: Readonly<Record<string, Pick<Session['players'][string], 'holds' | 'pack'>>>;
	readonly suspectPacks: readonly string[];
};

/**
 * What each wears once all of these are in hands, in their order. Who plays on a pack has the best claim to it, then who
 * has it on with empty hands, then who comes first. Whoever has no such claim keeps what they wear, which may in turn be
 * what another was to have.
 */
export function packsHanded(
	{ players, suspectPacks }: Wearing,
	handed: readonly HandedWithPack[],
): readonly PackHanded[] {
	const wornBy = (player: string) => players[player]?.pack ?? null;
	const wantedBy = ({ instrument, pack }: HandedWithPack) =>
		instrument === null || pack === null || suspectPacks.includes(pack) ? null : pack;
	const given = new Set(handed.map(({ instrument }) => instrument));
	// Nobody else changes: what they play on stays theirs, unless it is just what is taken from them.
	const others = Object.entries(players).flatMap(([player, { holds, pack }]) =>
		holds === null || given.has(holds) || handed.some((one) => one.player === player)
			? []
			: [{ player, pack }],
	);

	/** By player, who has the better claim to what they were to wear. */
	const keeping = new Map<string, string>();
	const claims = () => [
		...others,
		...handed.flatMap((one) => {
			const { player, instrument } = one;
			const wanted = keeping.has(player) ? null : wantedBy(one);
			return instrument === null ? [] : [{ player, pack: wanted ?? wornBy(player) }];
		}),
	];
	/** The less, the better is the claim; those who play on one pack already have the same. */
	function rank(player: string, pack: string): number {
		const place = handed.findIndex((one) => one.player === player);
		if (wornBy(player) !== pack) return handed.length + place;
		return players[player]?.holds == null ? place : -1;
	}
	function betterClaim(player: string, pack: string | null): string | null {
		if (pack === null) return null;
		const isBetter = (other: string) => rank(other, pack) < rank(player, pack);
		return claims().find((one) => one.pack === pack && isBetter(one.player))?.player ?? null;
	}

	/** The first who is to wear what another has the better claim to, and that other. */
	function stopped(): readonly [player: string, wearer: string] | null {
		for (const one of handed) {
			const wearer = keeping.has(one.player) ? null : betterClaim(one.player, wantedBy(one));
			if (wearer !== null) return [one.player, wearer];
		}
		return null;
	}

	for (let next = stopped(); next !== null; next = stopped()) keeping.set(...next);
	return handed.map((one) => {
		const own = wornBy(one.player);
		const wearer = keeping.get(one.player);
		if (wearer === undefined) return { worn: wantedBy(one) ?? own, wearer: null };
		// What they wore may be another's by now: they had nothing in hands.
		return { worn: betterClaim(one.player, own) === null ? own : null, wearer };
	});
}

/** The same for what one player is given out of the plan's turn, with the pack that belongs on with it. */
export function packHanded(
	session: Session,
	player: string,
	instrument: string,
): PackHanded & Pick<HandedWithPack, 'pack'> {
	const pack = packFor(session, player, instrument);
	const [handed] = packsHanded(session, [{ player, instrument, pack }]);
	return { pack, ...(handed ?? { worn: session.players[player]?.pack ?? null, wearer: null }) };
}
