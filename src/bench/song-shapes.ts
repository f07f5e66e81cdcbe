// The chord shapes that a song names as heard exposed, on the instrument that is in hands for it, to the
// ear: in tune each of them is still out by what equal temperament and the offsets make of it.

import { isSameTuning } from '../showfile/fitting-holdings.ts';
import { shapesInHands } from '../showfile/shapes-in-hands.ts';
import type { Instrument, Show, Song } from '../showfile/show.ts';
import { walkSet } from '../showfile/walk-set.ts';
import {
	type ChordShape,
	type HeardPair,
	openShapeName,
	shapeOnStrings,
} from '../tuning/chord-shape.ts';
import { KINDS } from '../tuning/kind.ts';
import type { Tuning } from '../tuning/tuning.ts';
import { shapeOnCard, type TuningCard, tuningCard } from './tuning-card.ts';

export type SongShape = {
	readonly song: Song;
	readonly player: string;
	readonly capo: number;
	readonly shape: ChordShape;
	/** What fingers call it; null where it has no name in this tuning. */
	readonly name: string | null;
	readonly pairs: readonly HeardPair[];
};

/**
 * The shapes that a song names for the card's player, on the card's strings under its capo; those that have
 * not as many frets as there are strings or courses are left out.
 *
 * @example
 * shapesOfSong(tuningCard(show, { instrument: instruments.A1, from: eStandard, to: eStandard, capo: 0, player: 'ash', referenceHertz: 440 }), { ...show.songs[0], shapes: { ash: [[0, 2, 2, 1, 0, 0]] } }).map(({ name, pairs }) => [name, pairs.length]) // => [['E', 5]]
 */
export function shapesOfSong(card: TuningCard, song: Song): readonly SongShape[] {
	const { player, instrument, capo, to } = card;
	if (player === null) return [];
	const perCourse = KINDS[instrument.kind].stringsPerCourse;
	const courses = to.notes.filter((_, index) => index % perCourse === 0);
	return (song.shapes?.[player] ?? [])
		.filter((shape) => shapeOnStrings(shape, { strings: to.notes.length, perCourse }) !== null)
		.map((shape) => ({
			song,
			player,
			capo,
			shape,
			name: openShapeName(shape, courses),
			pairs: shapeOnCard(card, shape),
		}));
}

/**
 * The shapes of all songs that have an instrument in this tuning, as the file says, each under its song's
 * own capo and with its player's offsets.
 *
 * @example
 * shapesInTuning(show, { instrument: instruments.A1, tuning: eStandard, referenceHertz: 440 }) // => []
 */
export function shapesInTuning(
	show: Show,
	asked: {
		readonly instrument: Instrument;
		readonly tuning: Tuning;
		readonly referenceHertz: number;
	},
): readonly SongShape[] {
	if (show.songs.every(({ shapes }) => shapes === undefined)) return [];
	const { instrument, tuning, referenceHertz } = asked;
	return shapesInHands(walkSet(show))
		.filter(
			({ holding }) =>
				holding.instrument.id === instrument.id && isSameTuning(holding.tuning, tuning),
		)
		.flatMap(({ song, player, holding: { capo } }) =>
			shapesOfSong(
				tuningCard(show, { instrument, from: tuning, to: tuning, capo, player, referenceHertz }),
				song,
			),
		);
}
