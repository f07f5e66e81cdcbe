// How far an instrument's set-up has gone from where the player likes it, and what to do about it
// without doing harm.

import type { InstrumentKind } from './kind.ts';

/** Millimetres, all optional; action as bass side then treble side. */
export type SetUpMeasures = {
	/** Height of strings over the first fret. */
	readonly actionFirst?: readonly number[];
	/** Over the fret at which the player's action is taken, the 12th as a rule. */
	readonly actionLast?: readonly number[];
	readonly relief?: number;
	readonly pickup?: readonly number[];
	/** Depth of the nut's slots over the first fret. */
	readonly nut?: readonly number[];
};

export type SetUpDrift = {
	readonly what: keyof SetUpMeasures;
	/** Measured less wanted, in the order of the target. */
	readonly millimetres: readonly number[];
};

/**
 * What is usual for a kind where the player has not said: action over the 12th fret, bass side then treble
 * side, and relief. Several public accounts of technicians for action; workshops' common practice
 * for relief, no source. Null where nothing is usual.
 *
 * @example
 * usualSetUp('electric-6') // => { actionLast: [1.9, 1.6], relief: 0.2 }
 * usualSetUp('other') // => null
 */
export function usualSetUp(kind: InstrumentKind): SetUpMeasures | null {
	if (kind.startsWith('electric') || kind === 'baritone-6')
		return { actionLast: [1.9, 1.6], relief: 0.2 };
	if (kind.startsWith('acoustic')) return { actionLast: [2.35, 1.7], relief: 0.2 };
	if (kind === 'nylon-6') return { actionLast: [4, 3.2] };
	if (kind === 'mandolin-8') return { actionLast: [1.9, 1.7] };
	if (kind.startsWith('bass')) return { actionLast: [2, 1.6], relief: 0.4 };
	return null;
}

const MEASURES = ['actionFirst', 'actionLast', 'relief', 'pickup', 'nut'] as const;

/**
 * Measured less wanted, for everything that has both; positive is higher, or more relief.
 *
 * @example
 * setUpDrift({ relief: 0.2 }, { relief: 0.25 }) // => [{ what: 'relief', millimetres: [0.05] }]
 */
export function setUpDrift(target: SetUpMeasures, measured: SetUpMeasures): readonly SetUpDrift[] {
	return MEASURES.flatMap((what) => {
		const wanted = [target[what] ?? []].flat();
		const found = [measured[what] ?? []].flat();
		if (wanted.length === 0 || found.length === 0) return [];
		const millimetres = wanted.slice(0, found.length).map((value, index) =>
			// To a hundredth of what a feeler gauge can tell, or subtraction leaves dust.
			Number(((found[index] ?? value) - value).toFixed(4)),
		);
		return [{ what, millimetres }];
	});
}

/** Nearer than this is on target: what a feeler gauge can tell (common practice, no source). */
const RELIEF_NEAR = 0.03;

/**
 * How much relief there is too much, negative too little; null when it is on target.
 *
 * @example
 * reliefOver(0.25, 0.26) // => null
 * reliefOver(0.2, 0.4) // => 0.2
 */
export function reliefOver(wanted: number, measured: number): number | null {
	const over = measured - wanted;
	return Math.abs(over) < RELIEF_NEAR ? null : over;
}
