// A capo as a player thinks of it: which open chord shapes it makes in which key, the same sound
// reached otherwise, and a capo that covers only some strings.

import { CAPO_HIGHEST } from './capo.ts';
import { midiOf, transposeName } from './pitch.ts';

/** Shapes that players have on open strings in E standard (common practice, no source). */
const OPEN_SHAPES = ['E', 'A', 'D', 'G', 'C'] as const;
const PITCH_CLASS: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, G: 7, A: 9 };
const KEY_NAMES = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'] as const;

export type CapoShape = { readonly capo: number; readonly shape: string };

/**
 * The key that a shape sounds in with the capo on this fret.
 *
 * @example
 * keyHeard({ shape: 'E', capo: 2 }) // => 'F#'
 */
export function keyHeard({ shape, capo }: CapoShape): string {
	return KEY_NAMES[((PITCH_CLASS[shape] ?? 0) + capo) % 12] ?? shape;
}

/**
 * Every way to play a key in open shapes of E standard with a capo, lowest fret first.
 *
 * @example
 * shapesFor('F#') // => [{ capo: 2, shape: 'E' }, { capo: 4, shape: 'D' }, { capo: 6, shape: 'C' }]
 */
export function shapesFor(key: string): readonly CapoShape[] {
	const wanted = midiOf(`${key}4`) % 12;
	return OPEN_SHAPES.map((shape) => ({
		shape,
		capo: (wanted - (PITCH_CLASS[shape] ?? 0) + 12) % 12,
	}))
		.filter(({ capo }) => capo <= CAPO_HIGHEST)
		.toSorted((one, other) => one.capo - other.capo);
}

/**
 * The same sound reached otherwise, the one known first; a `shape` of null is the key without a capo, where no
 * open shape has it.
 *
 * @example
 * sameSounds({ capo: 2, shape: 'E' }).map(({ capo }) => capo) // => [2, 4, 6, 0]
 * sameSounds({ capo: 0, shape: 'E' }).map(({ capo }) => capo) // => [0, 2, 4, 7]
 */
export function sameSounds(known: CapoShape): readonly CapoSound[] {
	const key = keyHeard(known);
	const all = shapesFor(key);
	const others = all.filter(({ shape }) => shape !== known.shape);
	const sounds = [known, ...others].map(({ capo, shape }) => ({ capo, shape, key }));
	const isOpen = all.some(({ capo }) => capo === 0);
	return isOpen ? sounds : [...sounds, { capo: 0, shape: null, key }];
}

/** One way to a sound: in which shapes with which capo, and the key heard. */
export type CapoSound = {
	readonly capo: number;
	readonly shape: string | null;
	readonly key: string;
};

/** A capo on a fret; `covers` are the numbers of the strings under it, all when left out. */
export type Capo = { readonly fret: number; readonly covers?: readonly number[] };

/**
 * The notes heard with the capo on, highest-numbered string first; strings that it leaves free sound as
 * they are tuned.
 *
 * @example
 * notesHeard(['E2', 'A2', 'D3', 'G3', 'B3', 'E4'], { fret: 2, covers: [3, 4, 5] }) // => ['E2', 'B2', 'E3', 'A3', 'B3', 'E4']
 */
export function notesHeard(notes: readonly string[], { fret, covers }: Capo): readonly string[] {
	return notes.map((note, index) => {
		const isCovered = covers === undefined || covers.includes(notes.length - index);
		return isCovered && fret > 0 ? transposeName(note, fret) : note;
	});
}
