// Who holds what from song to song when everything goes by the file and nobody thinks ahead: a part
// that names no instrument takes the first that fits. Enough to see what is wrong with a show; which
// choice is best is for the plan to say.

import { openTuningsFor, soundsLike } from '../tuning/capo.ts';
import { isReachable } from '../tuning/retune.ts';
import type { Tuning } from '../tuning/tuning.ts';
import { runningOrder, type SetSong } from './running-order.ts';
import type { Cue, Instrument, Part, Player, Show } from './show.ts';

/** An instrument in somebody's hands, and how it is tuned there. */
export type Holding = {
	readonly instrument: Instrument;
	readonly tuning: Tuning;
	readonly capo: number;
};

/** A change of hands that gives a player something. */
export type Given = { readonly player: Player; readonly to: Holding };

/** A part that no instrument was found for. */
export type Unmet = {
	readonly player: Player;
	readonly part: Extract<Part, { kind: 'needs' }>;
	/** Instruments that would do, all in other hands; none when nothing on the rack would. */
	readonly inOtherHands: readonly Instrument[];
};

/** A moment at which hands may change: a song's start, or a cue that hands over. */
export type Moment = {
	readonly on: SetSong;
	/** Null at the song's start. */
	readonly cue: Cue | null;
	/** In hands from here on, by player id, in the order of the file; null for empty hands. */
	readonly hands: ReadonlyMap<string, Holding | null>;
	/** Who is named here, by player id. */
	readonly parts: Readonly<Record<string, Part>>;
	readonly given: readonly Given[];
	readonly unmet: readonly Unmet[];
};

/** Below this gap there is no time for a player to move a capo. */
const CAPO_MOVES_IN_SECONDS = 10;

/** Every moment of the set at which hands may change, in order. */
export function walkSet(show: Show): readonly Moment[] {
	const moments: Moment[] = [];
	let hands: ReadonlyMap<string, Holding | null> = new Map(
		show.players.map((player) => [player.id, null]),
	);
	for (const on of runningOrder(show)) {
		const points = [
			{ cue: null, parts: on.song.parts },
			...on.song.cues.flatMap((cue) =>
				Object.keys(cue.hand).length > 0 ? [{ cue, parts: cue.hand }] : [],
			),
		];
		for (const point of points) {
			const moment = momentOf(show, { on, ...point }, hands);
			moments.push(moment);
			hands = moment.hands;
		}
	}
	return moments;
}

type Point = Pick<Moment, 'on' | 'cue' | 'parts'>;

function momentOf(show: Show, point: Point, before: Moment['hands']): Moment {
	const hands = new Map<string, Holding | null>();
	// Named parts and what is kept come first: only what they leave is free for the others.
	for (const { id } of show.players) {
		const part = point.parts[id];
		if (part?.kind === 'named') hands.set(id, holdingOf(show, part));
		else hands.set(id, part === undefined ? (before.get(id) ?? null) : null);
	}
	const unmet: Unmet[] = [];
	for (const player of show.players) {
		const part = point.parts[player.id];
		if (part?.kind !== 'needs') continue;
		const fitting = holdingsThatFit(show, player, part);
		const taken = new Set([...hands.values()].map((holding) => holding?.instrument.id));
		const held = before.get(player.id)?.instrument.id;
		const free = fitting.filter(({ instrument }) => !taken.has(instrument.id));
		const choice = free.find(({ instrument }) => instrument.id === held) ?? free[0];
		if (choice) hands.set(player.id, choice);
		else unmet.push({ player, part, inOtherHands: fitting.map(({ instrument }) => instrument) });
	}
	const given = show.players.flatMap((player): Given[] => {
		const to = hands.get(player.id) ?? null;
		const from = before.get(player.id) ?? null;
		return to && !goesOn(from, to, point) ? [{ player, to }] : [];
	});
	return { ...point, hands, given, unmet };
}

function holdingOf(show: Show, part: Extract<Part, { kind: 'named' }>): Holding | null {
	const instrument = show.instruments.find(({ id }) => id === part.instrument);
	if (!instrument) return null;
	return { instrument, tuning: part.tuning ?? instrument.tuning, capo: part.capo };
}

/** Whether the same instrument simply stays in hands; the player moves a capo where there is time. */
function goesOn(from: Holding | null, to: Holding, { on, cue }: Point): boolean {
	if (cue === null && on.isAfterInterval) return false;
	if (from === null || from.instrument.id !== to.instrument.id) return false;
	const gap = cue === null ? (on.gapSeconds ?? Number.POSITIVE_INFINITY) : 0;
	return (
		isSameTuning(from.tuning, to.tuning) && (from.capo === to.capo || gap >= CAPO_MOVES_IN_SECONDS)
	);
}

/**
 * What this player could be given for a part that names no instrument: the preferred one first, then in
 * the order of the file, spares last. Each in its own tuning where a capo does, else in the tuning that
 * wants the lowest fret.
 */
export function holdingsThatFit(
	show: Show,
	player: Player,
	part: Extract<Part, { kind: 'needs' }>,
): readonly Holding[] {
	const rank = (instrument: Instrument) =>
		instrument.id === part.prefer ? 0 : instrument.spare ? 2 : 1;
	return show.instruments
		.filter(
			(one) =>
				one.kind === part.instrumentKind &&
				(one.for === null || one.for.includes(player.id)) &&
				part.features.every((feature) => one.features.includes(feature)),
		)
		.flatMap((instrument) => tunedFor(instrument, part.sounds))
		.sort((a, b) => rank(a.instrument) - rank(b.instrument));
}

function tunedFor(instrument: Instrument, sounds: Tuning): Holding[] {
	const ways = openTuningsFor(sounds, instrument.kind).filter(({ tuning }) =>
		canBeIn(instrument, tuning),
	);
	const way = ways.find(({ tuning }) => isSameTuning(tuning, instrument.tuning)) ?? ways[0];
	return way ? [{ instrument, ...way }] : [];
}

/** Whether an instrument can be brought to an open tuning; one with a floating bridge keeps its own. */
function canBeIn(instrument: Instrument, tuning: Tuning): boolean {
	const own = instrument.tuning;
	if (isSameTuning(own, tuning)) return true;
	return instrument.bridge === 'fixed' && isReachable(own.notes, tuning.notes, instrument.kind);
}

/** Whether two tunings have the same pitches, however they are called. */
export function isSameTuning(one: Tuning, other: Tuning): boolean {
	return one === other || soundsLike(one, 0, other);
}
