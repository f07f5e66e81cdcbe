// Who holds what from song to song when everything goes by the file and nobody thinks ahead: a part
// that names no instrument takes the first that fits, a named one that cannot be had its first backup.
// Enough to see what is wrong with a show; which choice is best is for the plan to say.

import {
	backupsFor,
	type Holding,
	holdingsThatFit,
	isSameTuning,
	staysInTune,
} from './fitting-holdings.ts';
import { runningOrder, type SetSong } from './running-order.ts';
import type { Cue, Instrument, Part, Player, Show } from './show.ts';

/** A change of hands that gives a player something. */
export type Given = { readonly player: Player; readonly to: Holding };

/** A part that no instrument was found for. */
export type Unmet = {
	readonly player: Player;
	readonly part: Extract<Part, { kind: 'needs' }>;
	/** Instruments that would do, all in other hands; none when nothing on the rack would. */
	readonly inOtherHands: readonly Instrument[];
};

/** A named instrument that its player cannot have. */
export type Substituted = {
	readonly player: Player;
	readonly named: Holding;
	/** Who has it instead, because they keep it or are named it too; null where its floating bridge will not go into that tuning. */
	readonly holder: Player | null;
	/** What they have in its place; null for nothing. */
	readonly to: Holding | null;
};

/** A point of the set at which hands may change: a song's start, or a cue that hands over. */
export type SetPoint = {
	readonly on: SetSong;
	/** Null at the song's start. */
	readonly cue: Cue | null;
	/** In hands from here on, by player id, in the order of the file; null for empty hands. */
	readonly hands: ReadonlyMap<string, Holding | null>;
	/** Who is named here, by player id. */
	readonly parts: Readonly<Record<string, Part>>;
	readonly given: readonly Given[];
	readonly unmet: readonly Unmet[];
	readonly substituted: readonly Substituted[];
};

/** Below this gap there is no time for a player to move a capo. */
const CAPO_MOVES_IN_SECONDS = 10;

/** Every point of the set at which hands may change, in order. */
export function walkSet(show: Show): readonly SetPoint[] {
	const walked: SetPoint[] = [];
	let before: Before = { hands: new Map(), above: {} };
	for (const on of runningOrder(show)) {
		const asked = [
			{ cue: null, parts: on.song.parts },
			...on.song.cues.flatMap((cue) =>
				Object.keys(cue.hand).length > 0 ? [{ cue, parts: cue.hand }] : [],
			),
		];
		for (const one of asked) {
			const point = setPointAt(show, { on, ...one }, before);
			walked.push(point);
			before = { hands: point.hands, above: { ...before.above, ...point.parts } };
		}
	}
	return walked;
}

type PointAsked = Pick<SetPoint, 'on' | 'cue' | 'parts'>;

/** What a point comes after. */
type Before = {
	readonly hands: SetPoint['hands'];
	/** The last part that each player was named, by player id. */
	readonly above: Readonly<Record<string, Part>>;
};

type Named = { readonly player: Player; readonly wanted: Holding };

function setPointAt(show: Show, point: PointAsked, before: Before): SetPoint {
	const hands = new Map<string, Holding | null>(show.players.map(({ id }) => [id, null]));
	const holderOf = (instrument: Instrument): Player | null =>
		show.players.find(({ id }) => hands.get(id)?.instrument === instrument) ?? null;
	const substituted: Substituted[] = [];
	const waiting: Named[] = [];
	const give = (named: readonly Named[]): void => {
		for (const { player, wanted } of named) {
			const isFree = holderOf(wanted.instrument) === null;
			const isInTune = staysInTune(wanted.instrument, wanted.tuning);
			if (isFree && isInTune) hands.set(player.id, wanted);
			else waiting.push({ player, wanted });
		}
	};
	const asked = show.players.map((player) => ({ player, part: askedOf(player, point, before) }));
	const named = asked.flatMap(({ player, part }): readonly Named[] => {
		const wanted = part?.kind === 'named' ? holdingOf(show, part) : null;
		return wanted ? [{ player, wanted }] : [];
	});
	const isKeeper = ({ player }: Named) => point.parts[player.id] === undefined;
	// What is kept comes first, then what is named: only what they leave is free for the others.
	for (const { player, part } of asked) {
		if (part === undefined) hands.set(player.id, before.hands.get(player.id) ?? null);
	}
	give(named.filter(isKeeper));
	give(named.filter((one) => !isKeeper(one)));
	for (const { player, wanted } of waiting) {
		const isInTune = staysInTune(wanted.instrument, wanted.tuning);
		const holder = isInTune ? holderOf(wanted.instrument) : null;
		const to = backupsFor(show, player, wanted).find((one) => holderOf(one.instrument) === null);
		hands.set(player.id, to ?? null);
		substituted.push({ player, named: wanted, holder, to: to ?? null });
	}
	const unmet: Unmet[] = [];
	for (const { player, part } of asked) {
		if (part?.kind !== 'needs') continue;
		const fitting = holdingsThatFit(show, player, part);
		const held = before.hands.get(player.id)?.instrument;
		const free = fitting.filter(({ instrument }) => holderOf(instrument) === null);
		const choice = free.find(({ instrument }) => instrument === held) ?? free[0];
		if (choice) hands.set(player.id, choice);
		else unmet.push({ player, part, inOtherHands: fitting.map(({ instrument }) => instrument) });
	}
	const given = show.players.flatMap((player): Given[] => {
		const to = hands.get(player.id) ?? null;
		const from = before.hands.get(player.id) ?? null;
		return to && !goesOn(from, to, point) ? [{ player, to }] : [];
	});
	return { ...point, hands, given, unmet, substituted };
}

/**
 * What a player asks for here; undefined to keep what they have. Who is not named repeats the part above:
 * that is asked for again after an interval, the named instrument then instead of its backup, and where
 * nothing could be had for it.
 */
function askedOf(player: Player, { on, cue, parts }: PointAsked, before: Before): Part | undefined {
	const part = parts[player.id];
	if (part !== undefined) return part;
	const above = before.above[player.id];
	if (above?.kind === 'named' && cue === null && on.isAfterInterval) return above;
	return before.hands.get(player.id) ? undefined : above;
}

function holdingOf(show: Show, part: Extract<Part, { kind: 'named' }>): Holding | null {
	const instrument = show.instruments.find(({ id }) => id === part.instrument);
	if (!instrument) return null;
	return { instrument, tuning: part.tuning ?? instrument.tuning, capo: part.capo };
}

/** Whether the same instrument simply stays in hands; the player moves a capo where there is time. */
function goesOn(from: Holding | null, to: Holding, { on, cue }: PointAsked): boolean {
	if (cue === null && on.isAfterInterval) return false;
	if (from === null || from.instrument.id !== to.instrument.id) return false;
	const gap = cue === null ? (on.gapSeconds ?? Number.POSITIVE_INFINITY) : 0;
	return (
		isSameTuning(from.tuning, to.tuning) && (from.capo === to.capo || gap >= CAPO_MOVES_IN_SECONDS)
	);
}
