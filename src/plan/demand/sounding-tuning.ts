// What is heard of an open tuning with a capo on, as a tuning of its own.

import type { InstrumentKind } from '../../tuning/kind.ts';
import { transposeName } from '../../tuning/pitch.ts';
import type { Tuning } from '../../tuning/tuning.ts';
import { tuningOfNotes } from '../../tuning/tuning.ts';
import type { OpenWithCapo } from './same-pitches.ts';

const known = new WeakMap<Tuning, Map<number, Tuning>>();

/**
 * The pitches heard, under the name that they have on this kind of instrument where they have one.
 *
 * @example
 * soundingTuning({ tuning: instruments.A2.tuning, capo: 1 }, 'electric-6').name // => 'E standard'
 */
export function soundingTuning({ tuning, capo }: OpenWithCapo, kind: InstrumentKind): Tuning {
	if (capo === 0) return tuning;
	const byCapo = known.get(tuning) ?? new Map<number, Tuning>();
	known.set(tuning, byCapo);
	const found = byCapo.get(capo);
	if (found !== undefined) return found;
	const notes = tuning.notes.map((note) => transposeName(note, capo));
	const made = tuningOfNotes(notes, kind);
	byCapo.set(capo, made);
	return made;
}
