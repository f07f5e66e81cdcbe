// The order in which strings are brought from one tuning to another, so that each turn of a tuner
// disturbs the others least and every string ends on its way up.

import { midiOf } from './pitch.ts';

export type RetuneStep = {
	/** String number, 1 the last of the notes. */
	readonly string: number;
	readonly from: string;
	readonly to: string;
	/** Semitones up; negative down, 0 only to be checked. */
	readonly move: number;
	/** `down`: past the pitch, then up to it. `check`: up to pitch where it has gone. */
	readonly how: 'down' | 'up' | 'check';
	/** 1, or 2 where all go round twice. */
	readonly round: 1 | 2;
};

/**
 * Steps from one list of notes to another of the same strings, highest-numbered first. On a fixed bridge
 * only strings that change, those going down first, the furthest first; on a floating one all
 * strings, down before up, twice round. The common practice of the bench, no source.
 *
 * @example
 * retuneSteps(['E2', 'A2'], ['D2', 'A2'], 'fixed') // => [{ string: 2, from: 'E2', to: 'D2', move: -2, how: 'down', round: 1 }]
 * retuneSteps(['E2', 'A2'], ['D2', 'A2'], 'floating').length // => 4
 */
export function retuneSteps(
	fromNotes: readonly string[],
	toNotes: readonly string[],
	bridge: 'fixed' | 'floating',
): readonly RetuneStep[] {
	const all = toNotes.map((to, index): RetuneStep => {
		const from = fromNotes[index] ?? to;
		const move = midiOf(to) - midiOf(from);
		const how = move < 0 ? 'down' : move > 0 ? 'up' : 'check';
		return { string: toNotes.length - index, from, to, move, how, round: 1 };
	});
	const changed = all.filter(({ move }) => move !== 0);
	if (changed.length === 0) return [];
	if (bridge === 'fixed') return changed.toSorted(downFirst);
	const again = all.map((step) => ({ ...step, move: 0, how: 'check', round: 2 }) as const);
	return [...all.toSorted(downFirst), ...again];
}

/** The lowest going furthest down first; what goes up comes last, the least first. */
function downFirst(one: RetuneStep, other: RetuneStep): number {
	return one.move - other.move || other.string - one.string;
}
