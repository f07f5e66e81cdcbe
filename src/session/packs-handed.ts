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
 * What each wears once all of these are in hands, in their order. Packs are exchanged where all who wear them are
 * given others; of two who are to have the same one the first has it. Who has nothing in hands is in nobody's way.
 */
export function packsHanded(
	{ players, suspectPacks }: Wearing,
	handed: readonly HandedWithPack[],
): readonly PackHanded[] {
	const given = new Set(handed.map(({ instrument }) => instrument));
	// Nobody else changes: what they play on stays theirs, unless it is just what is taken from them.
	const others = Object.entries(players).filter(
		([id, { holds }]) =>
			holds !== null && !given.has(holds) && !handed.some(({ player }) => player === id),
	);
	const keeping = new Map<HandedWithPack, string>();
	const isPlaying = (player: string) => players[player]?.holds != null;
	const wornBy = (player: string) => players[player]?.pack ?? null;
	const wantedBy = ({ instrument, pack }: HandedWithPack) =>
		instrument === null || pack === null || suspectPacks.includes(pack) ? null : pack;
	const after = (one: HandedWithPack) =>
		keeping.has(one) ? wornBy(one.player) : (wantedBy(one) ?? wornBy(one.player));

	function wearerOf(pack: string, one: HandedWithPack): string | null {
		const apart = others.find(([, state]) => state.pack === pack)?.[0];
		if (apart !== undefined) return apart;
		const place = handed.indexOf(one);
		const isOwn = wornBy(one.player) === pack;
		const rival = handed.find((other, at) => {
			if (other === one || other.instrument === null || after(other) !== pack) return false;
			const isTheirs = wornBy(other.player) === pack;
			return isOwn ? isTheirs && isPlaying(other.player) : isTheirs || at < place;
		});
		return rival?.player ?? null;
	}

	function inTheWay(one: HandedWithPack): string | null {
		const wanted = wantedBy(one);
		const isOnAlready = wanted === wornBy(one.player) && isPlaying(one.player);
		return wanted === null || isOnAlready ? null : wearerOf(wanted, one);
	}

	// Who keeps theirs may stand in the way of another: until nobody is found any more.
	for (;;) {
		const stopped = handed.find((one) => !keeping.has(one) && inTheWay(one) !== null);
		if (stopped === undefined) break;
		keeping.set(stopped, inTheWay(stopped) ?? '');
	}
	return handed.map((one) => {
		const wearer = keeping.get(one) ?? null;
		const worn = after(one);
		// What they wore is another's by now: they had nothing in hands.
		const isLost = wearer !== null && worn !== null && wearerOf(worn, one) !== null;
		const isTheirs = !isLost || isPlaying(one.player);
		return { worn: isTheirs ? worn : null, wearer };
	});
}

/** The same for what one player is given out of the plan's turn. */
export function packHanded(session: Session, player: string, instrument: string): PackHanded {
	const pack = packFor(session, player, instrument);
	const [handed] = packsHanded(session, [{ player, instrument, pack }]);
	return handed ?? { worn: session.players[player]?.pack ?? null, wearer: null };
}
