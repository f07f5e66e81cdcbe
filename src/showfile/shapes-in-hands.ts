// The chord shapes that songs name as heard exposed, with what is in hands for them as the file says, and
// what does not fit of them.

import { type ChordShape, shapeOnStrings, shapeWords } from '../tuning/chord-shape.ts';
import { KINDS } from '../tuning/kind.ts';
import type { Finding } from './finding.ts';
import { type Holding, isSameTuning } from './fitting-holdings.ts';
import type { Song } from './show.ts';
import type { SetPoint } from './walk-set.ts';

/** A song for which a player's shapes are heard, on what they hold in it. */
export type ShapesInHands = {
	readonly song: Song;
	readonly player: string;
	readonly shapes: readonly ChordShape[];
	readonly holding: Holding;
};

/** Every song's shapes on whatever its player holds in it, in the order of the set; each instrument in each tuning once a song. */
export function shapesInHands(points: readonly SetPoint[]): readonly ShapesInHands[] {
	const found: ShapesInHands[] = [];
	for (const { on, hands } of points) {
		for (const [player, shapes] of Object.entries(on.song.shapes ?? {})) {
			const holding = hands.get(player);
			if (!holding) continue;
			const isKnown = found.some(
				(one) =>
					one.song === on.song && one.player === player && isSameHolding(one.holding, holding),
			);
			if (!isKnown) found.push({ song: on.song, player, shapes, holding });
		}
	}
	return found;
}

function isSameHolding(one: Holding, other: Holding): boolean {
	return (
		one.instrument === other.instrument &&
		one.capo === other.capo &&
		isSameTuning(one.tuning, other.tuning)
	);
}

/** Shapes that no instrument in hands has the strings for, and shapes for empty hands. */
export function checkShapes(points: readonly SetPoint[]): readonly Finding[] {
	const held = shapesInHands(points);
	const songs = [...new Set(points.map(({ on }) => on.song))];
	return songs.flatMap((song) =>
		Object.entries(song.shapes ?? {}).flatMap(([player, shapes]): readonly Finding[] => {
			const about = { severity: 'note', song: song.id, player } as const;
			const mine = held.filter((one) => one.song === song && one.player === player);
			const [first] = mine;
			if (first === undefined) return [{ ...about, code: 'shape-without-hands' }];
			return shapes
				.filter((shape) => mine.every(({ holding }) => !fits(shape, holding)))
				.map((shape): Finding => {
					const { instrument, tuning } = first.holding;
					const { stringsPerCourse } = KINDS[instrument.kind];
					return {
						...about,
						code: 'shape-strings',
						instrument: instrument.id,
						shape: shapeWords(shape),
						frets: shape.length,
						strings: tuning.notes.length / stringsPerCourse,
						isInCourses: stringsPerCourse === 2,
					};
				});
		}),
	);
}

function fits(shape: ChordShape, { instrument, tuning }: Holding): boolean {
	const perCourse = KINDS[instrument.kind].stringsPerCourse;
	return shapeOnStrings(shape, { strings: tuning.notes.length, perCourse }) !== null;
}
