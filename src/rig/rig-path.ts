// A player's sound path as it stands now: what is in hands, the pack that is worn, the board, the parts
// behind it; and what of it is not to be trusted.

import type { Session } from '../session/session.ts';
import type { RigPart } from '../showfile/rig.ts';
import type { Pedal, Show } from '../showfile/show.ts';
import { type BatteryLeft, isShort } from './battery-hours.ts';
import { checkRig } from './check-rig.ts';
import { soundPath } from './sound-path.ts';

/** Why something on the way is not to be trusted. */
export type Doubt = 'suspect' | 'stuck' | 'load' | 'power' | 'battery';

export type PathPiece = { readonly doubts: readonly Doubt[] } & (
	| { readonly kind: 'instrument'; readonly instrument: string | null }
	| { readonly kind: 'pack'; readonly pack: string }
	| { readonly kind: 'board'; readonly pedals: readonly PedalOnPath[] }
	| { readonly kind: 'part'; readonly part: RigPart }
);

export type PedalOnPath = { readonly pedal: Pedal; readonly doubts: readonly Doubt[] };

/**
 * Whether a show says anything of boards, rigs, supplies or packs.
 *
 * @example
 * saysOfRig(BOARD) // => true
 */
export function saysOfRig({ boards, rigs = {}, supplies = [], packs }: Show): boolean {
	return Object.keys(boards).length + Object.keys(rigs).length + supplies.length + packs.length > 0;
}

/**
 * The players of whom a show says a rig or a board, in its order.
 *
 * @example
 * playersWithRig(BOARD) // => ['bo']
 */
export function playersWithRig({ players, boards, rigs = {} }: Show): readonly string[] {
	return players
		.map(({ id }) => id)
		.filter((id) => Object.hasOwn(boards, id) || Object.hasOwn(rigs, id));
}

/** The pedals of a player's board, those that are named one after the other in that order, at the place of the first of them. */
function pedalsInOrder(
	{ boards }: Pick<Show, 'boards'>,
	player: string,
	order: readonly string[] = [],
): readonly Pedal[] {
	const pedals = boards[player] ?? [];
	const named = order.flatMap((id) => pedals.find((one) => one.id === id) ?? []);
	const at = pedals.findIndex((one) => named.includes(one));
	const isOther = (one: Pedal) => !named.includes(one);
	return at < 0
		? pedals
		: [...pedals.slice(0, at), ...named, ...pedals.slice(at + 1).filter(isOther)];
}

/**
 * One player's sound path.
 *
 * @example
 * pathOf({ show: BOARD, players: {}, suspectPacks: [], boards: {} }, { player: 'bo', batteries: [], endsInHours: 1 }).map(({ kind }) => kind) // => ['instrument', 'board']
 */
export function pathOf(
	session: Session,
	{
		player,
		batteries,
		endsInHours,
		order = [],
	}: {
		readonly player: string;
		readonly batteries: readonly BatteryLeft[];
		/** Until the last song ends. */
		readonly endsInHours: number;
		readonly order?: readonly string[];
	},
): readonly PathPiece[] {
	const { show, players, suspectPacks } = session;
	const { holds = null, pack = null } = players[player] ?? {};
	const wrong = findingsBy(show, player);
	const low = (what: BatteryLeft['what'], owner: string | null, id: string): readonly Doubt[] =>
		batteries.some(
			(one) =>
				one.what === what && one.player === owner && one.id === id && isShort(one, endsInHours),
		)
			? ['battery']
			: [];
	const stuck = session.boards[player]?.context.stuck ?? [];
	const board: PathPiece = {
		kind: 'board',
		doubts: [],
		pedals: pedalsInOrder(show, player, order).map((pedal) => ({
			pedal,
			doubts: [
				...(stuck.includes(pedal.id) ? (['stuck'] as const) : []),
				...(wrong.get(pedal.id) ?? []),
				...low('pedal', player, pedal.id),
			],
		})),
	};
	return [
		{
			kind: 'instrument',
			instrument: holds,
			doubts: holds === null ? [] : low('instrument', null, holds),
		},
		...(pack === null
			? []
			: [
					{
						kind: 'pack',
						pack,
						doubts: [
							...(suspectPacks.includes(pack) ? (['suspect'] as const) : []),
							...low('pack', null, pack),
						],
					} as const,
				]),
		...soundPath(show, player).flatMap((part): readonly PathPiece[] => {
			if (part.kind === 'board') return [board];
			// What is worn says it already.
			if (part.kind === 'pack' && pack !== null) return [];
			const doubts = [...(wrong.get(part.id) ?? []), ...low('part', player, part.id)];
			return [{ kind: 'part', part, doubts }];
		}),
	];
}

/** What `check` finds of a player's pedals and parts, as far as it takes the sound. */
function findingsBy(show: Show, player: string): ReadonlyMap<string, readonly Doubt[]> {
	const found = new Map<string, Doubt[]>();
	const add = (id: string, doubt: Doubt): void => {
		const all = found.get(id) ?? [];
		if (!all.includes(doubt)) found.set(id, [...all, doubt]);
	};
	for (const one of checkRig(show)) {
		if (!('player' in one) || one.player !== player) continue;
		switch (one.code) {
			case 'amp-load':
			case 'amp-no-load':
				add(one.amplifier, 'load');
				break;
			case 'cab-power':
				add(one.cab, 'load');
				break;
			case 'supply-volts':
			case 'supply-centre':
			case 'supply-current':
				add(one.id, 'power');
		}
	}
	return found;
}

/**
 * The order of pedals that a song asks of a player's board; empty for the file's own.
 *
 * @example
 * songOrder(BOARD, 'one', 'bo') // => []
 */
export function songOrder(
	{ songs }: Pick<Show, 'songs'>,
	song: string | null,
	player: string,
): readonly string[] {
	return songs.find(({ id }) => id === song)?.order?.[player] ?? [];
}

/**
 * The pedals that are to stand in another order for a song than they do for another one, in their order; null where
 * nothing changes, empty where they go back to the file's order. `from`: null for a board as the file has it.
 *
 * @example
 * orderChange(BOARD, { player: 'bo', from: null, to: 'one' }) // => null
 */
export function orderChange(
	show: Pick<Show, 'boards' | 'songs'>,
	{
		player,
		from,
		to,
	}: { readonly player: string; readonly from: string | null; readonly to: string | null },
): readonly Pedal[] | null {
	const asked = songOrder(show, to, player);
	const before = pedalsInOrder(show, player, songOrder(show, from, player));
	const after = pedalsInOrder(show, player, asked);
	if (after.every(({ id }, at) => before[at]?.id === id)) return null;
	return after.filter(({ id }) => asked.includes(id));
}
