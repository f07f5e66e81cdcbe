// Which instruments a player could have for a sound, each in the open tuning and with the capo that give
// it: for a part that names none, and in place of a named one that cannot be had.

import { openTuningsFor, soundingMidis, soundsLike } from '../tuning/capo.ts';
import { transposeName } from '../tuning/pitch.ts';
import { isReachable } from '../tuning/retune.ts';
import { type Tuning, tuningOfNotes } from '../tuning/tuning.ts';
import type { Instrument, Part, Player, Show } from './show.ts';

const HIGHEST_MIDI = 127;

/** An instrument in somebody's hands, and how it is tuned there. */
export type Holding = {
	readonly instrument: Instrument;
	readonly tuning: Tuning;
	readonly capo: number;
};

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
				mayHave(player, one) &&
				part.features.every((feature) => one.features.includes(feature)),
		)
		.flatMap((instrument) => tunedFor(instrument, part.sounds))
		.sort((a, b) => rank(a.instrument) - rank(b.instrument));
}

/**
 * What could be played where a named instrument cannot be had: by its `instead`, best first; without
 * that, what sounds the same on instruments of its kind that this player may have, spares first. Its own
 * floating bridge with a capo counts among them.
 */
export function backupsFor(show: Show, player: Player, named: Holding): readonly Holding[] {
	const { kind, instead } = named.instrument;
	const sounds = soundOf(named);
	if (instead === undefined) {
		return show.instruments
			.filter((one) => one.kind === kind && mayHave(player, one))
			.flatMap((one) => tunedFor(one, sounds))
			.sort((a, b) => Number(b.instrument.spare) - Number(a.instrument.spare));
	}
	return instead.flatMap(({ instrument: id, tuning, capo }): readonly Holding[] => {
		const instrument = show.instruments.find((one) => one.id === id);
		if (instrument === undefined) return [];
		if (tuning === null) return tunedFor(instrument, sounds);
		return staysInTune(instrument, tuning) ? [{ instrument, tuning, capo }] : [];
	});
}

/** Whether this player may be given an instrument that nobody named for them. */
export function mayHave(player: Player, instrument: Instrument): boolean {
	return instrument.for === null || instrument.for.includes(player.id);
}

/** Whether an instrument can be in a tuning tonight: one with a floating bridge keeps its own. */
export function staysInTune({ bridge, tuning: own }: Instrument, tuning: Tuning): boolean {
	return bridge === 'fixed' || isSameTuning(own, tuning);
}

/** Whether two tunings have the same pitches, however they are called. */
export function isSameTuning(one: Tuning, other: Tuning): boolean {
	return one === other || soundsLike(one, 0, other);
}

/** What is heard of it, with its capo on; null where no note has that name any more. */
function soundOf({ instrument, tuning, capo }: Holding): Tuning | null {
	if (capo === 0) return tuning;
	if (soundingMidis(tuning, capo).some((midi) => midi > HIGHEST_MIDI)) return null;
	const heard = tuning.notes.map((note) => transposeName(note, capo));
	return tuningOfNotes(heard, instrument.kind);
}

function tunedFor(instrument: Instrument, sounds: Tuning | null): Holding[] {
	if (sounds === null) return [];
	const ways = openTuningsFor(sounds, instrument.kind).filter(({ tuning }) =>
		canBeIn(instrument, tuning),
	);
	const way = ways.find(({ tuning }) => isSameTuning(tuning, instrument.tuning)) ?? ways[0];
	return way ? [{ instrument, ...way }] : [];
}

function canBeIn(instrument: Instrument, tuning: Tuning): boolean {
	const own = instrument.tuning;
	if (isSameTuning(own, tuning)) return true;
	return instrument.bridge === 'fixed' && isReachable(own.notes, tuning.notes, instrument.kind);
}
