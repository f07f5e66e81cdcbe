// What can be known without asking: ids, who could play what, what a new instrument probably is.

import { idFrom } from '../setlist/player-ids.ts';
import type { DraftCell, DraftInstrument, DraftPlayer, ShowDraft } from '../setlist/show-draft.ts';
import { type InstrumentKind, KINDS, type KindFamily } from '../tuning/kind.ts';

/** An id made of a name, which nothing else of the list has. */
export function freeId(
	name: string,
	what: 'player' | 'instrument' | 'song',
	list: readonly { readonly id: string }[],
): string {
	return idFrom(name, what, new Set(list.map(({ id }) => id)));
}

/** What a player can be said to play, in the order in which it is offered, with what that is on a rack. */
export const PLAYS = {
	guitar: { families: ['guitar', 'twelve', 'baritone'], kind: 'electric-6' },
	bass: { families: ['bass'], kind: 'bass-4' },
	mandolin: { families: ['mandolin'], kind: 'mandolin-8' },
	ukulele: { families: ['ukulele'], kind: 'ukulele-4' },
	banjo: { families: ['banjo'], kind: 'banjo-5' },
} as const satisfies Record<
	string,
	{ readonly families: readonly KindFamily[]; readonly kind: InstrumentKind }
>;

export type Plays = keyof typeof PLAYS;

export const PLAYS_NAMES = Object.keys(PLAYS) as readonly Plays[];

function playsKind({ plays }: DraftPlayer, kind: InstrumentKind): boolean {
	const known = PLAYS_NAMES.find((name) => name === plays);
	const families: readonly KindFamily[] = known === undefined ? [] : PLAYS[known].families;
	return families.includes(KINDS[kind].family);
}

/** The players who play such a kind; everybody where nobody says so. */
export function playersOfKind(draft: ShowDraft, kind: InstrumentKind): readonly DraftPlayer[] {
	const able = draft.players.filter((one) => playsKind(one, kind));
	return able.length > 0 ? able : draft.players;
}

/** The players who could have it in hands. */
export function playersFor(draft: ShowDraft, instrument: DraftInstrument): readonly DraftPlayer[] {
	const named = instrument.for;
	return named === null
		? playersOfKind(draft, instrument.kind)
		: draft.players.filter(({ id }) => named.includes(id));
}

/** The kind of the instrument before it; the first is what the first player plays. */
export function likelyKind({ players, instruments }: ShowDraft): InstrumentKind {
	const last = instruments.at(-1);
	if (last) return last.kind;
	const plays = PLAYS_NAMES.find((name) => name === players[0]?.plays);
	return PLAYS[plays ?? 'guitar'].kind;
}

/** The tuning that a kind is usually in; every kind but `other` has one. */
export function usualTuning(kind: InstrumentKind): string | null {
	return KINDS[kind].usual;
}

/** What each player begins with: the first on the rack that is theirs and that nobody before them has. */
export function firstHands(draft: ShowDraft): Readonly<Record<string, DraftCell>> {
	const hands: Record<string, DraftCell> = {};
	const taken = new Set<string>();
	for (const player of draft.players) {
		const found = draft.instruments.find(
			(one) =>
				!taken.has(one.id) &&
				(one.for === null ? playsKind(player, one.kind) : one.for.includes(player.id)),
		);
		if (!found) continue;
		taken.add(found.id);
		hands[player.id] = { kind: 'named', instrument: found.id, tuning: null, capo: 0 };
	}
	return hands;
}

/** What each player has in a song, by what that or a song before it says. */
export function handsAt(draft: ShowDraft, song: number): Readonly<Record<string, DraftCell>> {
	return Object.assign({}, ...draft.songs.slice(0, song + 1).map(({ hands }) => hands));
}
